export const HELP = `leafward: takes a damaged collection safely through drying and cleaning to the camera, and home again

  npx leafward start [folder]      plan a campaign and show it on a page (default: the demo Saltmere Reach Harbour Papers)
  npx leafward plan <folder>       plan a campaign: plan.json, papers as PDF, tables as CSV
  npx leafward papers <folder>     print papers, all or --only some: sheets, cards, tags, labels, records, reports, calendars, tables
  npx leafward replan <folder>     a plan for a new morning, as near to the accepted one as it pays, and what changed and why
  npx leafward check <folder>      read everything and name each problem, with what to do
  npx leafward new <folder>        write an empty campaign folder with example rows
  npx leafward what-if <folder> "<change>" …   what a change would do to the plan, beside the plan as it is
  npx leafward ease <folder>        what holds the plan back, what would help for the asking, what would not
  npx leafward stop <folder> <day>   we stop on that day: what to start, what to leave, how to leave it safe
  npx leafward stores <folder>      what runs out when, what to send for and by when; one store week by week: --item <store>
  npx leafward sample <looked at> <found> <of all>   how sure we are of a share, and how many more to look at
  npx leafward ask <folder> [item]  what to look at next, gentlest first, and what nothing can change any more
  npx leafward ready <folder> [kind]  which may go before the camera now by every rule, and what stands before the others
  npx leafward why <folder> <item>  one item in plain sentences: seen, follows, forbidden until when, rule, source
  npx leafward prove [folder]       prove the safety claims over every item the rules can tell apart
  npx leafward decide < case.json   decide one case and say why, as JSON

  The log, which keeps what is acknowledged; each has its own --help:
  npx leafward keep <folder>            begin the log from the sheets, or take in what they say otherwise
  npx leafward backup <folder> [to]     copy the log, read the copy from end to end, SHA-256 beside it
  npx leafward restore <backup> <folder>  put a backup in its place; the old log stays, what is newer is taken over
  npx leafward verify <folder or file>  pages, sums, every entry, every chain
  npx leafward serve <folder>           the log for several devices, without the internet
  npx leafward carry out|in|words …     the log in one signed file, from place to place without a network

  Many campaigns in one PostgreSQL (LEAFWARD_DATABASE_URL):
  npx leafward programme                every campaign, those most at risk first; --plan asks for fresh plans
  npx leafward work                     makes those plans; on as many machines as there are

  Damp, by published models; each has its own --help and --json:
  npx leafward air <logger files>   is mould growing there: three lamps, what to do, a plot
  npx leafward air-out <in> <out>   open the windows now or not
  npx leafward dry                  how long until the bag reads dry, as a band
  npx leafward gel                  how much gel, how often, and how much is too much
  npx leafward mix                  wipes of a wanted strength, by weight and by volume
  npx leafward clear-air            when to go in again after dusty work
  npx leafward ward <folder> [item] each bag: release earned or what is missing, and from when to look

  npx leafward wrap <kind> --size HxWxT   a wrapper or box from a book's size: pieces, folds, drawings at true scale
  npx leafward cut <folder or pieces.csv> --stock WxH   all wanted pieces on the sheets in stock with least waste, drawn
  npx leafward sizes <folder>             which few box sizes to order, how many of each, what one more would save

  --out <folder>       where plan and papers go (default: out/ and the campaign folder's name)
  --today yyyy-mm-dd   the morning to plan for (default: planFrom of campaign.json, or its start)
  --sheet A4|Letter    paper size
  --cards soon|all     bench cards for the three coming working days and bag tags for the fortnight, or for every item
  --port n             port of the page
  --all                check: every problem, not the first ten of a kind

Exit codes: 0 well; 1 something must be mended, the rest was done; 2 nothing could be done.
Advice to people follows the rules named on each paper. Follow local rules and licensed practice.`;
