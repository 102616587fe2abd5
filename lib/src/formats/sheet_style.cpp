#include "formats/sheet_parts.hpp"

namespace sweepwright::formats {

std::string_view sheet_style() {
  // A page of 194 x 263 mm fits A4 and US letter.
  return R"css(
@page { margin: 7mm; }
* { box-sizing: border-box; }
body { margin: 0; color: #000; background: #fff;
  font: 8.4pt/1.22 'Liberation Sans', Arial, Helvetica, 'DejaVu Sans Condensed',
  sans-serif;
  font-variant-numeric: tabular-nums; }
.page { width: 194mm; min-height: 263mm; margin: 0 auto; display: flex; flex-direction: column;
  gap: 1.2mm; }
h1, h2, p, dl, dd, ul { margin: 0; padding: 0; }
h2 { font-size: 8.4pt; background: #e6e6e6; border-top: 0.3mm solid #000; padding: 0.2mm 1mm;
  margin-bottom: 0.4mm; break-after: avoid; }
.head { display: flex; gap: 2.5mm; align-items: stretch; }
.head h1 { display: flex; align-items: center; gap: 3mm; font-size: 17pt; line-height: 1;
  max-width: 62mm; }
.head h1.small, .head h1.small .sector { font-size: 13pt; }
.head h1.long { font-size: 9pt; overflow-wrap: anywhere; }
.head h1 .sector { flex: none; font-size: 17pt; border: 0.7mm solid #000; padding: 1.2mm 2mm; }
.head dl.fields { flex: 1; align-content: center; grid-template-columns: 23mm 1fr 18mm 32mm;
  font-weight: bold; }
.head dl.fields dt { font-weight: normal; }
.key { display: flex; border: 0.5mm solid #000; }
.key div { flex: 1 1 auto; padding: 0.3mm 1.2mm; border-left: 0.2mm solid #000; }
.key div:first-child { border-left: 0; }
.key dt { font-size: 6.4pt; font-weight: normal; white-space: nowrap; }
.key dd { font-size: 10.5pt; font-weight: bold; white-space: nowrap; }
dl.fields { display: grid; grid-template-columns: 18mm 1fr; column-gap: 1mm; padding: 0 1mm; }
dl.fields dt { font-size: 7.4pt; line-height: 1.38; }
dl.fields dd { overflow-wrap: anywhere; white-space: pre-line; }
dl.fields dd:empty { border-bottom: 0.2mm solid #000; min-height: 1.25em; }
.main { display: flex; flex: 1 1 auto; gap: 2mm; }
.blocks { width: 75mm; display: flex; flex-direction: column; gap: 0.8mm; }
.map { flex: 1; position: relative; min-height: 75mm; }
.profile { break-inside: avoid; margin: 1mm 0; }
.profile svg { width: 100%; height: auto; }
.map svg { position: absolute; left: 0; top: 0; width: 100%; height: 100%; }
.under { display: grid; grid-template-columns: 75mm 1fr; gap: 2mm; }
.under ul { list-style: square; padding: 0 1mm 0 3.5mm; }
.under li { overflow-wrap: anywhere; }
table { border-collapse: collapse; width: 100%; }
td, th { padding: 0 0.6mm; text-align: right; white-space: nowrap; font-weight: normal;
  vertical-align: top; }
.working { font-size: 8pt; }
.working td { text-align: left; white-space: normal; overflow-wrap: anywhere; }
.working td:first-child { width: 40mm; }
.working td:last-child { width: 14mm; text-align: right; font-weight: bold; white-space: nowrap; }
.legs { font-size: 8.8pt; line-height: 1.25; }
.legs thead { display: table-header-group; }
.legs th { font-size: 7.6pt; font-weight: bold; border-bottom: 0.2mm solid #000; }
.legs tbody tr { border-bottom: 0.1mm solid #aaa; break-inside: avoid; }
.legs .search td { font-weight: bold; }
.legs td:last-child, .legs th:last-child { text-align: left; padding-left: 1.5mm; }
.note { white-space: pre-line; font-size: 7.6pt; padding: 0 0.6mm; }
.debrief div.row { display: flex; }
.debrief div.blank { flex: 1; border: 0.2mm solid #000; margin: 0 -0.2mm -0.2mm 0;
  padding: 0.2mm 0.8mm; font-size: 7.2pt; }
.cautions { border: 0.5mm solid #000; padding: 0.5mm 1.2mm; font-weight: bold; }
.footer { font-size: 5.6pt; line-height: 1.15; overflow-wrap: anywhere; }
.page + .page { break-before: page; }
.page .cautions { margin-top: auto; }
@media screen { .page { margin: 6mm auto; } }
)css";
}

}  // namespace sweepwright::formats
