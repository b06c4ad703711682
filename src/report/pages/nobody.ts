/** Nobody to make a page for; the message names no child and no therapist. In a file of its own: pages are loaded late. */
export class NobodyOfThatName extends RangeError {}
