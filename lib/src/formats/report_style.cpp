#include "formats/html_markup.hpp"

namespace sweepwright::formats {

std::string_view report_style() {
  return R"css(
@page { margin: 8mm; }
* { box-sizing: border-box; }
body { margin: 6mm auto; width: min(277mm, 100% - 6mm); color: #000; background: #fff;
  font: 9pt/1.25 'Liberation Sans', Arial, Helvetica, 'DejaVu Sans Condensed', sans-serif;
  font-variant-numeric: tabular-nums; }
h1, h2, p, dl, dd, ul { margin: 0; padding: 0; }
h1 { font-size: 17pt; line-height: 1.2; overflow-wrap: anywhere; }
h2 { font-size: 9pt; background: #e6e6e6; border-top: 0.3mm solid #000; padding: 0.3mm 1mm;
  margin: 2.5mm 0 0.4mm; break-after: avoid; }
dl.fields { display: grid; grid-template-columns: 34mm 1fr; column-gap: 2mm; }
dl.fields dt { font-size: 7.8pt; line-height: 1.45; }
dl.fields dd { font-weight: bold; overflow-wrap: anywhere; white-space: pre-line; }
dl.fields dd:empty { border-bottom: 0.2mm solid #000; min-height: 1.25em; }
.key { display: flex; flex-wrap: wrap; border: 0.5mm solid #000; margin-top: 1.5mm; }
.key div { flex: 1 1 auto; padding: 0.3mm 1.5mm; border-left: 0.2mm solid #000; }
.key div:first-child { border-left: 0; }
.key dt { font-size: 7.2pt; }
.key dd { font-size: 13pt; font-weight: bold; }
section { overflow-x: auto; }
table { border-collapse: collapse; width: 100%; }
td, th { padding: 0.2mm 1mm; text-align: right; vertical-align: top; white-space: nowrap; }
th { font-size: 8pt; border-bottom: 0.3mm solid #000; vertical-align: bottom; }
.text { text-align: left; white-space: normal; overflow-wrap: break-word; }
tbody tr { border-bottom: 0.1mm solid #aaa; break-inside: avoid; }
tbody td:first-child { font-weight: bold; }
.note { font-size: 8pt; overflow-wrap: anywhere; }
ul { list-style: square; padding: 0 1mm 0 4mm; }
li { overflow-wrap: anywhere; }
.timeline, .map, .chart { margin-top: 3mm; break-inside: avoid; overflow-x: auto; }
.timeline svg, .map svg, .chart svg { display: block; width: 100%; min-width: 180mm; height: auto; }
.cautions { border: 0.5mm solid #000; padding: 0.5mm 1.2mm; font-weight: bold; margin-top: 3mm; }
.footer { font-size: 6pt; line-height: 1.2; overflow-wrap: anywhere; }
)css";
}

}  // namespace sweepwright::formats
