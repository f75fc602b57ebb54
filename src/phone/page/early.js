// Scripts run, so what is asked may be shown: once this is through, the browser paints it, ahead of the
// page's own script. Where that one breaks off, as in a browser too old to read it, or is refused, what
// stands there for no script at all is shown again.
document.documentElement.className = "js";
onerror = function () { document.documentElement.className = ""; };
addEventListener("DOMContentLoaded", function () { if (onerror) onerror(); });
