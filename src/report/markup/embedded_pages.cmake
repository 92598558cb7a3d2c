# The files of data/page that embedded_pages.h declares.
list(APPEND embedded_files
  page/agenda.html
  page/band.html
  page/cautions.html
  page/check_back.html
  page/compare.html
  page/crew.html
  page/days.html
  page/document.html
  page/figure.html
  page/figures.css
  page/figures.js
  page/headline.html
  page/order.html
  page/outlook.html
  page/palette.css
  page/patterns.svg
  page/plan.html
  page/sheet.css
  page/sheet.js
  page/sources.html
  page/time.html
  page/zones.html)
