"use strict";
(function () {
  var find = document.getElementById("find");
  var show = document.getElementById("show");
  var rows = Array.from(document.querySelectorAll("#raft-table tbody tr"));

  function wanted(row, word, kind) {
    if (word && row.textContent.toLowerCase().indexOf(word) < 0) { return false; }
    var mark = row.dataset.mark;
    switch (kind) {
      case "look": return Number(row.dataset.look) > 0;
      case "off": return ["on-track", "none", "not-told", "not-seen", "ended"].indexOf(mark) < 0;
      case "tonight": return row.dataset.tonight === "true";
      case "before": return row.dataset.tonight === "false";
      default: return true;
    }
  }

  function sieve() {
    var word = find.value.trim().toLowerCase();
    var shown = 0;
    rows.forEach(function (row) {
      var on = wanted(row, word, show.value);
      row.hidden = !on;
      document.getElementById(row.dataset.raft).hidden = !on;
      shown += on ? 1 : 0;
    });
    document.getElementById("shown").textContent = shown + " of " + rows.length + " rafts";
  }

  function value(row, column) {
    var cell = row.cells[column];
    var text = cell.dataset.v || cell.textContent.trim();
    var number = parseFloat(text.replace("at least ", ""));
    return /^(at least )?-?[0-9.]+( (%|cm²|sq in))?$/.test(text) ? number : text.toLowerCase();
  }

  function compare(a, b) {
    if (a === "" || b === "") { return a === b ? 0 : a === "" ? 1 : -1; }
    if (typeof a === "number" && typeof b === "number") { return a - b; }
    return String(a).localeCompare(String(b), "en", {numeric: true});
  }

  function sort(table, column, up) {
    var body = table.tBodies[0];
    Array.from(body.rows)
      .map(function (row, i) { return {row: row, v: value(row, column), i: i}; })
      .sort(function (a, b) {
        var empty = a.v === "" || b.v === "";
        return (empty || up ? 1 : -1) * compare(a.v, b.v) || a.i - b.i;
      })
      .forEach(function (each) { body.appendChild(each.row); });
  }

  function sortable(table) {
    Array.from(table.tHead.rows[0].cells).forEach(function (head, column) {
      var button = document.createElement("button");
      button.type = "button";
      button.textContent = head.textContent;
      head.textContent = "";
      head.appendChild(button);
      button.addEventListener("click", function () {
        var up = head.getAttribute("aria-sort") !== "ascending";
        Array.from(table.tHead.rows[0].cells).forEach(function (h) { h.removeAttribute("aria-sort"); });
        head.setAttribute("aria-sort", up ? "ascending" : "descending");
        sort(table, column, up);
      });
    });
  }

  function follow() {
    var target = location.hash && document.getElementById(decodeURIComponent(location.hash.slice(1)));
    if (!target || target.tagName !== "DETAILS") { return; }
    if (target.hidden && find) {
      find.value = "";
      show.value = "all";
      sieve();
    }
    target.open = true;
    target.scrollIntoView();
    target.querySelector("summary").focus({preventScroll: true});
  }

  function each(selector, work) { document.querySelectorAll(selector).forEach(work); }

  function say(row, note, until) {
    var told = row.querySelector("output");
    fetch("/seen", {
      method: "POST",
      headers: {"X-Desk": document.documentElement.dataset.desk},
      body: new URLSearchParams({item: row.dataset.item, note: note, until: until})
    })
      .then(function (answer) {
        return answer.text().then(function (text) {
          if (!answer.ok) { throw new Error(text); }
          row.classList.add("told");
          row.querySelectorAll("button, input").forEach(function (b) { b.disabled = true; });
          told.textContent = note + (until ? " until " + until : "")
            + "; to undo, delete " + text + ". The next results leave it out.";
        });
      })
      .catch(function (e) { told.textContent = "Not written: " + e.message; });
  }

  function clickable(row) {
    var name = row.textContent.replace(/\s+/g, " ").trim().slice(0, 80);
    var box = document.createElement("span");
    box.className = "clicks";
    function button(text, work) {
      var b = document.createElement("button");
      b.type = "button";
      b.textContent = text;
      b.setAttribute("aria-label", text + ": " + name);
      b.addEventListener("click", work);
      box.appendChild(b);
    }
    button("Done", function () { say(row, "done", ""); });
    button("Seen", function () { say(row, "seen", ""); });
    var day = document.createElement("input");
    day.type = "date";
    day.setAttribute("aria-label", "Put off until: " + name);
    day.value = new Date(Date.now() + 7 * 864e5).toISOString().slice(0, 10);
    button("Put off until", function () { if (day.value) { say(row, "put off", day.value); } });
    box.appendChild(day);
    box.appendChild(document.createElement("output"));
    row.appendChild(box);
  }

  if (document.documentElement.dataset.desk) {
    var marked = document.documentElement.dataset.told.split(" ").map(decodeURIComponent);
    each(".work li[data-item]", function (row) {
      if (marked.indexOf(row.dataset.item) < 0) { clickable(row); } else { row.classList.add("told"); }
    });
  }
  each("table.sorts", sortable);
  if (find) {
    document.querySelector(".sieve").hidden = false;
    document.querySelector(".doing").hidden = false;
    document.querySelector(".sieve").addEventListener("submit", function (e) { e.preventDefault(); });
    find.addEventListener("input", sieve);
    show.addEventListener("change", sieve);
    document.getElementById("open").addEventListener("click", function () {
      each("details.raft", function (d) { d.open = Number(d.dataset.look) > 0 && !d.hidden; });
    });
    document.getElementById("close").addEventListener("click", function () {
      each("details.raft", function (d) { d.open = false; });
    });
    sieve();
  }
  document.addEventListener("click", function (e) {
    var link = e.target.closest && e.target.closest("a[href^='#raft-']");
    if (link && link.getAttribute("href") === location.hash) { follow(); }
  });
  window.addEventListener("hashchange", follow);
  follow();
  window.addEventListener("load", follow);
})();
