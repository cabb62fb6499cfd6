// The page's wall clock begins at ten in the morning of a day in May at every load, and goes on from there: what runs into
// the night, and so what stands on the page, hangs on the hour.
(() => {
  const Real = Date;
  const shift = new Real(2026, 4, 1, 10, 0).getTime() - Real.now();
  globalThis.Date = class extends Real {
    constructor(...parts) {
      if (parts.length) super(...parts);
      else super(Real.now() + shift);
    }
    static now() {
      return Real.now() + shift;
    }
  };
})();
