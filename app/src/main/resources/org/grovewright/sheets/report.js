// Niceties only: the page works without them.
(function () {
  "use strict";
  var dialog = document.createElement("dialog");
  if (typeof dialog.showModal !== "function") { return; }
  dialog.setAttribute("aria-labelledby", "dialog-title");
  var trail = [];
  document.body.appendChild(dialog);

  function button(text, action) {
    var element = document.createElement("button");
    element.type = "button";
    element.textContent = text;
    element.addEventListener("click", action);
    return element;
  }

  function show(id) {
    var source = document.getElementById(id);
    if (!source) { return; }
    var title = document.createElement("h2");
    title.id = "dialog-title";
    title.tabIndex = -1;
    title.textContent = source.dataset.label;
    var body = source.cloneNode(true);
    body.removeAttribute("id");
    var buttons = document.createElement("p");
    if (trail.length > 0) {
      buttons.append(button(document.body.dataset.back, function () { show(trail.pop()); }), " ");
    }
    buttons.append(button(document.body.dataset.close, function () { dialog.close(); }));
    dialog.replaceChildren(title, body, buttons);
    dialog.dataset.id = id;
    if (!dialog.open) { dialog.showModal(); }
    title.focus();
  }

  document.addEventListener("click", function (event) {
    var link = event.target.closest("a.fig");
    if (!link || event.ctrlKey || event.metaKey || event.shiftKey) { return; }
    event.preventDefault();
    if (dialog.contains(link)) { trail.push(dialog.dataset.id); } else { trail = []; }
    show(link.getAttribute("href").slice(1));
  });
  dialog.addEventListener("click", function (event) {
    if (event.target === dialog) { dialog.close(); }
  });

  function reveal() {
    var target = location.hash && document.getElementById(decodeURIComponent(location.hash.slice(1)));
    for (var at = target; at; at = at.parentElement) {
      if (at.tagName === "DETAILS") { at.open = true; }
    }
    if (target) { target.scrollIntoView(); }
  }
  window.addEventListener("hashchange", reveal);
  reveal();

  var opened = [];
  window.addEventListener("beforeprint", function () {
    opened = Array.from(document.querySelectorAll("main section:not(#workings) details:not([open])"));
    opened.forEach(function (details) { details.open = true; });
  });
  window.addEventListener("afterprint", function () {
    opened.forEach(function (details) { details.open = false; });
  });
})();
