export const HOUSE_HELP = `leafward wrap <kind> --size HxWxT: pieces, folds and drawings of a wrapper or box for one book
leafward wrap <kind> <folder> <item>: the same for an item as surveyed

  kinds: jacket, four-flap, two-strip, phase-box (soft, of card), drop-back

  --size 240x165x32      mm: height (along the spine), width, thickness, with its wrapper on
  --thick 30,32,31       thickness at three places; the largest counts
  --stock 0.5            thickness of paper, card or board: mm, or points such as 20pt
  --clearance 1          room beyond the book, mm; play in a drop-back box
  --boards 3             jacket: thickness of the book's cover boards (0 without)
  --flap 140             jacket: how far each flap reaches in;  --turn-in 40;  --film for polyester, cut to the height
  --grams 80             jacket: g/m² of the paper, for what its data sheet must show
  --full-flaps           four-flap: head and tail flap over the whole height, not half
  --overlap 75           two-strip: 50 to 100 mm
  --cloth 0.4 --lining 0 --square 3   drop-back: cloth, lining, how far the case stands over
  --cut-from B1          a sheet in stock: an ISO name (A0, B1, RA2 …), 813x1016, or 32x40in
  --grain long|short     the side of that sheet its grain follows
  --copies 1             how many are made
  --out <folder>         write the drawing as PDF at true scale over pages, SVG and DXF
  --sheet A4|Letter      the printer's paper
  --json                 the same answer as JSON, mm

Exit codes: 0 well; 1 the sheet in stock is too small; 2 it could not be done.`;
