/** SVG text as an element. A parsed document runs no script, and ours holds none. */
export function svgElement(text: string): SVGSVGElement {
  const { documentElement } = new DOMParser().parseFromString(text, "image/svg+xml");
  if (!(documentElement instanceof SVGSVGElement)) throw new RangeError("svgElement: this is no SVG");
  return document.importNode(documentElement, true);
}
