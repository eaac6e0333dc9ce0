/* The help of each damp command, printed for --help. */

const EXIT = "Exit codes: 0 well; 1 something must be mended or danger was found; 2 it could not be done.";
const JSON_LINE = "  --json                 the same answer as JSON: fractions, °C, hours, kg";

const LOGGER_LINES = `  --date-order dmy|mdy|ymd   how the dates are written
  --unit C|F|K           unit of temperature; also --unit fraction or --unit % for humidity
  --decimal ,|.          decimal mark
  --offset +02:00        how far the logger's clock is ahead of UTC
  --summer-time out|none put summer time back to standard time, or leave the clock as it is
  --column role=heading  a column by its heading or number (0 is the first); roles: time, date, clock,
                         temperature, humidity, dew-point, sensor; may be given several times
  --sensor name          which of several sensors in a file`;

export const AIR_HELP = `leafward air <logger files…>: can mould grow where the logger lies, and what to do

  --surface file         logger of the coldest surface, read beside every air file
  --surface-offset -3    kelvin by which the coldest surface differs from the air
  --class name           how readily mould grows there: very-sensitive (default), sensitive, medium-resistant, resistant
  --from, --to           first and last day, 2026-06-01, or moment, 2026-06-01T08:00
  --plot out.svg         draw temperature, humidity, lamps and index over time (with several files: out-name.svg)
${LOGGER_LINES}
${JSON_LINE}

${EXIT}`;

export const AIR_OUT_HELP = `leafward air-out <inside file> <outside file>: open the windows now, or not
leafward air-out --inside "26 C 70 %" --outside "31 C 60 %"

  --surface 18           °C of the coldest surface inside: warns of dew
${LOGGER_LINES}
${JSON_LINE}

${EXIT}`;

export const DRY_HELP = `leafward dry --what book --size 300x220x45 --start 80 --room 50: how long until a bag reading of 55 %

  --what kind            book, file, palm-leaf, leather-board, loose-leaves
  --size HxWxT           mm: height (along the spine), width, thickness
  --start 80             what its closed bag shows now, %
  --room 50              relative humidity of the room, %
  --gel 0.5kg --bag 12L  dry gel in a closed bag, item included in its size
  --gel-at 30            humidity the gel was conditioned to, % (default: fresh and dry)
  --temp 26              °C (default 20)
  --want 55              reading to reach, % (default 55)
  --fanned               stood open and fanned, in sheaves of --sheaf 5 mm
  --leaf 0.2             loose leaves: mm of one leaf
  --readings 0:80,3:72   day and reading of the closed bag, %; the first is the start
  --weighings 0:812,3:805  day and grams, bag and gel taken off
  --scale-step 1         grams the scale tells apart
  --reader-error 3       how far the reader may be off, ± %
  --rest 24              in a room: hours the bag was closed before each reading
  --now 8                today's day (default: the last look)
${JSON_LINE}

${EXIT}`;

export const GEL_HELP = `leafward gel --mass 1.5kg --material rag-paper --from 80 --to 50: how much silica gel, in how many changes

  --mass 1.5kg           the item as it weighs now
  --material name        rag-paper, writing-paper, newsprint, kraft, leather, parchment, photograph, palm-leaf, wood,
                         cotton, jute
  --from 80 --to 50      what the closed bag shows now, and should show, %
  --floor 40             never below, % (default: what the material bears)
  --bag 12L              air around the item in the bag (default: four times the item)
  --temp 25              °C, 10 to 35
  --conditioned 45       gel left in air of that humidity, % (default: fresh from the oven)
  --at-once 200g         most gel that fits in at one time
  --packet 100g          mass of one packet, dry
  --days 30 --room 65 --film 0.1   count what leaks in: days, room's humidity %, mm of polyethylene film
  --colour-gel           the gel has a colour indicator
${JSON_LINE}

${EXIT}`;

export const MIX_HELP = `leafward mix --want 70 --volume 1000 --stock 96: wipe solution of alcohol and water

  --want 70              strength by volume, % (default 70)
  --volume 1000          mL of finished solution, or 1L (default 1000)
  --stock 96             strength of what was bought, by volume, % (default 96)
  --temp 26              °C of room and liquids (default 20)
  --room 40m3            or 5x4x3: also says how much may be out in that room
  --changes 1            air changes an hour of the room (default 0.3, a shut room)
  --label mix.pdf        a sheet to mix by, and labels for the bottles with the hazard signs
  --made 2026-06-01      day on the label (default: today)
  --sheet A4|Letter      paper size
${JSON_LINE}

${EXIT}`;

export const CLEAR_AIR_HELP = `leafward clear-air --room 5x4x3 --changes 2: minutes before going in again, and before unmasking

  --room 5x4x3           length, width and height in metres, or a volume such as 60m3 with --height 3
  --changes 2            air changes an hour (default 0.3, a shut room)
  --purifier 300m3/h     clean air of purifiers; cfm is understood
  --mixing 3             1 perfectly mixed, 3 usual, 10 a room full of shelves
${JSON_LINE}

${EXIT}`;
