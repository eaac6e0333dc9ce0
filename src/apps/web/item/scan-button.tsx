import { useEffect, useRef, useState } from "react";
import { scan } from "../../../core/say/rooms/scan.ts";
import "./scan-button.css";

/** Reads the QR code of a tag with the device's camera. A tag holds the number alone. */
export function ScanButton({ scanned }: { readonly scanned: (number: string) => void }) {
  const [isOpen, setOpen] = useState(false);
  const [failed, setFailed] = useState(false);
  const video = useRef<HTMLVideoElement>(null);
  useEffect(() => {
    if (!isOpen) return;
    const gone = new AbortController();
    void readCodes(video.current, gone.signal).then((read) => {
      if (gone.signal.aborted) return;
      setOpen(false);
      if (read === null) setFailed(true);
      else scanned(read);
    });
    return () => gone.abort();
  }, [isOpen, scanned]);
  if (!("mediaDevices" in navigator)) return null;
  return (
    <>
      <button
        type="button"
        onClick={() => {
          setFailed(false);
          setOpen(true);
        }}
      >
        {scan.open}
      </button>
      <p role="status" className="scan-failed">
        {failed && scan.failed}
      </p>
      {isOpen && (
        <div className="scan" role="dialog" aria-label={scan.title}>
          <video ref={video} muted playsInline aria-label={scan.title} />
          <p>{scan.help}</p>
          <button type="button" onClick={() => setOpen(false)}>
            {scan.close}
          </button>
        </div>
      )}
    </>
  );
}

const EVERY_MS = 150;

/** The first code the camera sees; null: there is no camera, or it may not be used. */
async function readCodes(video: HTMLVideoElement | null, gone: AbortSignal): Promise<string | null> {
  if (video === null) return null;
  let stream: MediaStream;
  try {
    stream = await navigator.mediaDevices.getUserMedia({ video: { facingMode: "environment" } });
  } catch {
    return null;
  }
  const stop = (): void => {
    for (const track of stream.getTracks()) track.stop();
  };
  gone.addEventListener("abort", stop);
  video.srcObject = stream;
  await video.play().catch(() => {});
  const canvas = document.createElement("canvas");
  const reader = await codeReader();
  while (!gone.aborted) {
    const read = codeIn(video, canvas, reader);
    if (read !== null) {
      stop();
      return read;
    }
    await new Promise((resolve) => setTimeout(resolve, EVERY_MS));
  }
  return null;
}

type CodeReader = (
  dots: Uint8ClampedArray,
  width: number,
  height: number,
) => { readonly data: string } | null;

/** Fetched when the first tag is scanned. Its types say that the function stands under `default`, its file that it is the module. */
async function codeReader(): Promise<CodeReader> {
  const { default: read } = await import("jsqr");
  return typeof read === "function" ? (read as CodeReader) : read.default;
}

function codeIn(video: HTMLVideoElement, canvas: HTMLCanvasElement, read: CodeReader): string | null {
  const { videoWidth: width, videoHeight: height } = video;
  const pen = canvas.getContext("2d", { willReadFrequently: true });
  if (width === 0 || pen === null) return null;
  canvas.width = width;
  canvas.height = height;
  pen.drawImage(video, 0, 0);
  return read(pen.getImageData(0, 0, width, height).data, width, height)?.data.trim() || null;
}
