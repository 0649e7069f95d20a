// A button that opens a short list under itself. Esc, a choice or a press elsewhere closes it and gives the focus back.
import { type ReactNode, useEffect, useId, useRef, useState } from "react";

export function Menu({ label, children }: { readonly label: string; readonly children: ReactNode }) {
  const [open, setOpen] = useState(false);
  const at = useRef<HTMLDivElement>(null);
  const id = useId();
  useEffect(() => {
    if (!open) return;
    const away = (event: Event) => {
      if (event.target instanceof Node && !at.current?.contains(event.target)) setOpen(false);
    };
    document.addEventListener("pointerdown", away);
    document.addEventListener("focusin", away);
    return () => {
      document.removeEventListener("pointerdown", away);
      document.removeEventListener("focusin", away);
    };
  }, [open]);
  const close = () => {
    setOpen(false);
    at.current?.querySelector("button")?.focus();
  };
  return (
    <div className="menu" ref={at} onKeyDown={(event) => { if (event.key === "Escape" && open) { event.stopPropagation(); close(); } }}>
      <button type="button" aria-expanded={open} aria-controls={id} onClick={() => setOpen(!open)}>{label}</button>
      {open && (
        <div className="list" id={id} role="group" aria-label={label}
          onClick={(event) => { if (event.target instanceof Element && event.target.closest("[data-closes]")) close(); }}>
          {children}
        </div>
      )}
    </div>
  );
}
