/** Words of reading a tag with the camera. */
export const scan = {
  open: "Scan a tag",
  title: "Scan a tag",
  help: "Hold the square code of the tag before the camera.",
  close: "Stop scanning",
  failed:
    "The camera cannot be used here. Type the number; whether this page may use the camera stands in the browser's settings.",
} as const;
