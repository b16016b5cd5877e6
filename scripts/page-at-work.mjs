/** What is done with the page in a real browser by more than one script. */

/** ms */
export const WAIT = { timeout: 120_000 };

/** It has answered everything that it asked itself, and what follows. */
export const still = async (page) => {
  for (let i = 0; i < 2; i++) {
    await page.waitForFunction(() => !document.querySelector('.working'), undefined, WAIT);
    await page.waitForTimeout(800);
  }
};

/** Fills by the labels of their fields; there once the quilt shows them. */
export const fillWith = async (page, kinds) => {
  await page.getByText('Fills: feathers, pebbles').click();
  for (const [label, kind] of kinds) {
    const choice = page.getByLabel(label, { exact: true });
    const option = choice.locator('option', { hasText: kind }).first();
    await option.waitFor({ state: 'attached', ...WAIT });
    await choice.selectOption(kind);
  }
  await page
    .locator('.quilt .ink.fill')
    .first()
    .waitFor({ state: 'attached', ...WAIT });
  await still(page);
};
