/** What the package names first cannot be imported by Node; the module beside it can, but has no types of its own. */
declare module "maxrects-packer/dist/maxrects-packer.mjs" {
  export { MaxRectsPacker } from "maxrects-packer";
}
