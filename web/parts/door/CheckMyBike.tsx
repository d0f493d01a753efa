/** The customer's own way in. */
export function CheckMyBike() {
  return (
    <a class="door-mybike" href="#mybike">
      <svg width="96" height="72" viewBox="0 0 96 72" aria-hidden="true">
        <path d="M4 12 34 16 62 22 94 18M4 12Q14 24 34 28L64 34M62 22 64 34 86 52M38 54 82 53" />
        <circle cx="34" cy="50" r="19" />
        <circle cx="34" cy="50" r="12" />
        <circle cx="87" cy="54" r="4" />
        <path class="hand" d="M30 16h8v34h-8zM30 23h4M30 30h6M30 37h4M30 44h6" />
        <circle class="hand dot" cx="34" cy="15" r="4" />
        <circle class="hand dot" cx="34" cy="50" r="4" />
      </svg>
      <span>
        <b>Check my bike ›</b>
        <span class="says">For riders: does the rear spring suit you? A tape, a helper, five minutes.</span>
      </span>
    </a>
  )
}
