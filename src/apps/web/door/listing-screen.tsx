import { door, listing } from "../../../core/say/rooms/door.ts";
import { Section } from "../frame/section.tsx";
import { useView } from "../link/use-view.ts";
import { linkTo } from "../walls/where.ts";
import { ListingForm } from "./listing-form.tsx";
import { PartForm } from "./part-form.tsx";
import { ScreenHeading } from "./screen-heading.tsx";

/** An item is listed, or its words, sizes and parts are changed. */
export function ListingScreen({ id }: { readonly id: string }) {
  const words = useView("listingWords", id);
  if (words === null) return null;
  const { listed, parts } = words;
  return (
    <>
      <div>
        <a href={listed === null ? linkTo("door") : linkTo("door", "item", id)}>
          {listed === null ? door.back : id}
        </a>
        <ScreenHeading>{listed === null ? listing.titleNew(id) : listing.titleEdit(id)}</ScreenHeading>
        <p className="quiet">{listing.help}</p>
      </div>
      <ListingForm key={listed === null ? "new" : "listed"} id={id} words={words} />
      {listed !== null && (
        <Section id="parts" heading={listing.parts} intro={listing.partsHelp}>
          {parts.length === 0 ? (
            <p className="quiet">{listing.noParts}</p>
          ) : (
            <ul>
              {parts.map((each) => (
                <li key={each}>{each}</li>
              ))}
            </ul>
          )}
          <PartForm item={id} words={words} />
        </Section>
      )}
    </>
  );
}
