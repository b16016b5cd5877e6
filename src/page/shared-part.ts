/**
 * The script that page and quick worker both start with: what both hold stands in it once. What that is, whoever builds
 * the page finds out, and adds it here.
 */

export {};
