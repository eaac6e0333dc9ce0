/** Whether the page runs from right to left; pictures are mirrored with it. */
export const isMirrored = (): boolean => document.documentElement.dir === "rtl";
