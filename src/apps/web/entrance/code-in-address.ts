/** The window of the server opens the page with a code of its own, `#in=FTDC-DEAH`; it is taken out of the address at once. */
export function codeInAddress(): string | null {
  const [, code = null] = /^#in=([A-Z0-9-]{4,20})$/.exec(location.hash) ?? [];
  if (code !== null) history.replaceState(null, "", location.pathname);
  return code;
}
