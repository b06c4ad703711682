/** The address that manifest.xml holds in the repository, for work on the add-in itself. */
export const SOURCE_BASE = "https://localhost:3000/";

export const BAD_ADDRESS =
  "--base takes an https address without a query, such as https://tools.example.org/windowline/: Excel loads add-ins over https alone.";

/**
 * The address under which a web server will serve dist/, with its closing slash; null where Excel would not load from it.
 *
 * @param {string} text
 * @returns {string | null}
 */
export function baseAddress(text) {
  if (!URL.canParse(text)) return null;
  const { protocol, username, password, search, hash, href } = new URL(text);
  if (protocol !== "https:" || username || password || search || hash || /[?#\s]/.test(text)) return null;
  return href.endsWith("/") ? href : `${href}/`;
}

/**
 * The manifest with every address of ours under another base.
 *
 * @param {string} manifest
 * @param {string} base - as `baseAddress` gives it
 * @returns {string}
 */
export function manifestAt(manifest, base) {
  return manifest.replaceAll(SOURCE_BASE, () => base.replaceAll("&", "&amp;").replaceAll("'", "&apos;"));
}
