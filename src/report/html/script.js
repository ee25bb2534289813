"use strict";
(() => {
  const table = document.getElementById("listings");
  const tools = document.querySelector(".tools");
  if (!table || !tools) return;
  const body = table.tBodies[0];
  const rows = [...body.rows];
  const select = document.getElementById("filter-verdict");
  const words = [...select.options].map((option) => option.value);
  const said = tools.querySelector("output");
  const order = new Intl.Collator("en", { numeric: true }).compare;

  const key = (row, place) => {
    const cell = row.cells[place];
    if (cell.classList.contains("verdict")) return words.indexOf(row.dataset.verdict);
    if (cell.dataset.sort !== undefined) return cell.dataset.sort === "" ? null : Number(cell.dataset.sort);
    return cell.textContent.trim() || null;
  };

  const sort = (heading, place) => {
    const down = heading.getAttribute("aria-sort") === "ascending";
    for (const other of table.tHead.rows[0].cells) other.removeAttribute("aria-sort");
    heading.setAttribute("aria-sort", down ? "descending" : "ascending");
    const keyed = rows.map((row, was) => ({ row, was, key: key(row, place) }));
    keyed.sort((a, b) => {
      // What has no value comes last either way.
      if (a.key === null || b.key === null) return (a.key === null) - (b.key === null) || a.was - b.was;
      const by = typeof a.key === "number" ? a.key - b.key : order(a.key, b.key);
      return (down ? -by : by) || a.was - b.was;
    });
    body.append(...keyed.map(({ row }) => row));
  };

  [...table.tHead.rows[0].cells].forEach((heading, place) => {
    if (heading.classList.contains("picture")) return;
    const button = document.createElement("button");
    button.type = "button";
    button.append(...heading.childNodes);
    heading.append(button);
    button.addEventListener("click", () => sort(heading, place));
  });

  const filter = () => {
    let shown = 0;
    for (const row of rows) {
      const hide = select.value !== "all" && row.dataset.verdict !== select.value;
      row.hidden = hide;
      const details = document.getElementById(row.cells[0].querySelector("a").hash.slice(1));
      if (details) details.hidden = hide;
      if (!hide) shown += 1;
    }
    said.textContent = shown + " of " + rows.length + " rows";
  };
  select.addEventListener("change", filter);
  table.classList.add("sorts");
  tools.hidden = false;
  filter();
})();
