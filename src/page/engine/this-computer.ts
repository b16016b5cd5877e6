/** Which addresses are of the computer itself. */

/** RFC 6761, section 6.3; RFC 1122, section 3.2.1.3; RFC 4291, section 2.5.3. */
const OF_THIS_COMPUTER = /^(localhost|.*\.localhost|127(\.\d+){3}|\[::1\])$/;

export const isOfThisComputer = ({ hostname }: Pick<Location, 'hostname'>): boolean =>
  OF_THIS_COMPUTER.test(hostname);

/** Whether others reach the page by its address. */
export const isReached = (address: Pick<Location, 'hostname' | 'protocol'>): boolean =>
  /^https?:$/.test(address.protocol) && !isOfThisComputer(address);
