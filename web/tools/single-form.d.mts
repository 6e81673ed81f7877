/** A script's text that cannot end the element it stands in, nor open a comment there. */
export function withinScript(text: string): string;
/** The same for a style's text. */
export function withinStyle(text: string): string;
