/** Words of taking a picture with the device's own camera. */
export const picture = {
  take: "Take a picture",
  kept: "Picture kept",
  alternative: (what: string) => `Picture: ${what}`,
  elsewhere: "This picture is still on the device that took it.",
} as const;
