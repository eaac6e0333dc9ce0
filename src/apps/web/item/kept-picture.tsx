import { useEffect, useState } from "react";
import { picture as words } from "../../../core/say/rooms/picture.ts";
import { pictureHere } from "../link/tablet-link.ts";

/** A picture by its SHA-256: from this device while it waits to be sent, else from the server. */
export function KeptPicture({ picture, says }: { readonly picture: string; readonly says: string }) {
  const [address, setAddress] = useState<string | null>(null);
  const [isMissing, setMissing] = useState(false);
  useEffect(() => {
    let own: string | null = null;
    void pictureHere(picture).then((blob) => {
      own = blob === null ? null : URL.createObjectURL(blob);
      setAddress(own ?? `/api/pictures/${picture}`);
    });
    return () => {
      if (own !== null) URL.revokeObjectURL(own);
    };
  }, [picture]);
  if (isMissing) return <p className="quiet">{words.elsewhere}</p>;
  if (address === null) return null;
  return <img src={address} alt={words.alternative(says)} onError={() => setMissing(true)} />;
}
