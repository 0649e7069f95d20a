// Everything that is kept in this browser: the instruments, the day book of the one in hand, and two versions compared.
// It comes on demand and stands over the bench until it is closed.
import { useEffect, useRef, useState } from "react";
import { useNow } from "../../state/hooks.ts";
import { Choice } from "../Choice.tsx";
import { Compare } from "./Compare.tsx";
import { DayBook } from "./DayBook.tsx";
import { Instruments } from "./Instruments.tsx";
import "./kept.css";

const PAGES = ["Instruments", "Day book", "Compare"] as const;
type Page = (typeof PAGES)[number];

export function Kept({ onClose }: { readonly onClose: () => void }) {
  const dialog = useRef<HTMLDialogElement>(null);
  const [page, setPage] = useState<Page>("Instruments");
  const open = useNow((s) => s.instrument !== null);
  useEffect(() => dialog.current?.showModal(), []);
  const close = () => dialog.current?.close();
  return (
    <dialog ref={dialog} className="kept" aria-label="Kept work" onClose={onClose} onKeyDown={(event) => event.stopPropagation()}
      onClick={(event) => { if (event.target === dialog.current) close(); }}>
      <div className="pages">
        <div className="heading">
          <h2>Kept work</h2>
          <Choice label="Kept work" of={open ? PAGES : ["Instruments"]} now={page} onChoose={setPage} />
          <button type="button" className="end" onClick={close}>Close</button>
        </div>
        {page === "Instruments" || !open ? <Instruments onOpened={close} /> : page === "Day book" ? <DayBook /> : <Compare />}
      </div>
    </dialog>
  );
}
