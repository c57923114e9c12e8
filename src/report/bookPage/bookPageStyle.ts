/** Rows that would run out at the side stand stacked. */
const NARROW_TABLES = [
  '.table-box :is(.labelled,.note,.run) thead{display:none}',
  '.table-box :is(.labelled,.note,.run) tr{display:block;padding:6px 0;border-bottom:1px solid var(--hair)}',
  '.table-box :is(.labelled,.note,.run) :is(th,td){border:0;padding:0;min-width:0;white-space:normal;overflow-wrap:anywhere}',
  '.labelled th{display:block}',
  '.table-box .labelled td[data-column]{display:flex;justify-content:space-between;gap:14px;text-align:right}',
  '.labelled td[data-column]::before{content:attr(data-column);color:var(--ink2);text-align:left;min-width:35%;flex-shrink:0;max-width:60%}',
  '.labelled td[data-column]:empty{display:none}',
  '.table-box .labelled .below td,.table-box .labelled .below span{display:block;max-width:none}',
  '.table-box .labelled tr:has(+.below){border-bottom:0;padding-bottom:0}',
  '.table-box .note tr{display:flex;flex-wrap:wrap;gap:0 14px;justify-content:space-between}',
  '.note td:nth-child(2){text-align:right;max-width:60%}',
  '.table-box .note td:last-child{flex-basis:100%;color:var(--ink2)}',
  '.table-box .run :is(th,td){display:inline}',
  '.run td:nth-child(2){font-weight:600}',
  '.run th::after{content:" "}',
  '.run td:nth-child(2)::after{content:"\\a";white-space:pre}',
  '.run td:nth-child(n+3):nth-last-child(n+3)::after{content:", "}',
  '.table-box .run td:last-child{display:block;color:var(--ink2)}',
].join('');

/**
 * The looks of a saved page. Rules for headings, boxes and tables hold for the page's own only, so that a shop card in it
 * keeps its looks.
 */
export const BOOK_PAGE_STYLE = `
:root{color-scheme:light dark;--board:#e4e6e3;--sheet:#fafaf7;--ink:#171b1f;--ink2:#434a50;--hair:#c6cac6;--steel:#838c92;--hatch:#838c92;--metal:#f3bd74;--metal2:#e89c3f;--skin:#9a4300;--none:#d3d6d3;--a:#b03a78;--b:#14508f;--e:#a770cc;--f:#3b7a12;--g:#411fcc;--h:#546638;--c:#0f9d86}
@media (prefers-color-scheme:dark){:root{--board:#17191b;--sheet:#1f2225;--ink:#eceee9;--ink2:#b4bab9;--hair:#3c4144;--steel:#8a9297;--hatch:#667077;--metal:#e89c3f;--metal2:#d98526;--skin:#ffd9a0;--none:#3c4144;--a:#f08cc0;--b:#79b4f2;--e:#8878cc;--f:#aef04a;--g:#7ee693;--h:#239423;--c:#2b8f78}}
*{box-sizing:border-box}
body{margin:0 auto;max-width:1080px;padding:24px 20px 60px;background:var(--board);color:var(--ink);font:15px/1.5 "Avenir Next Condensed","Roboto Condensed","DejaVu Sans Condensed",system-ui,sans-serif;font-variant-numeric:tabular-nums}
body>header,body>section,body>footer{background:var(--sheet);border:1px solid var(--hair);border-top:2px solid var(--ink);padding:18px 22px;margin-bottom:20px}
h1{font-size:27px;line-height:1.15;margin:0}
body>section>h2{font-size:19px;line-height:1.2;margin:0 0 12px}
body>section>h3,.behind>h3{font-size:15px;margin:14px 0 4px}
h1,h2,li,.verdict,.words{overflow-wrap:anywhere}
p{margin:0 0 8px;max-width:80ch}
body>section>ul,.behind>ul{margin:8px 0;padding-left:20px;max-width:80ch}
.kind,body>header p,caption,body>footer{color:var(--ink2)}
.kind{margin:0}
.words{font:17px/1.5 Charter,Georgia,"DejaVu Serif",serif}
.question{white-space:pre-line}
.verdict{font-size:17px}
.because{white-space:pre-line}
body>section>figure,.behind>figure{margin:14px 0}
body>section>figure svg,.behind>figure svg,body>section>svg{display:block;width:100%;max-height:70vh}
.steel{stroke:var(--ink);stroke-width:1.2}
.hatch{stroke:var(--steel);stroke-width:.8}
.metal{fill:var(--metal)}
.skin{fill:none;stroke:var(--skin);stroke-width:2}
.front{fill:none;stroke:var(--ink);stroke-width:2}
svg.section{max-width:900px}
svg.section.narrow{display:none!important}
svg.section text{font-size:11.5px;fill:var(--ink)}
svg.section .middle{text-anchor:middle}
svg.section .halo{paint-order:stroke;stroke:var(--sheet);stroke-width:4px;stroke-linejoin:round}
svg.section :is(.hair,.thin){fill:none;stroke:var(--ink2);stroke-width:.7}
svg.section .solid{fill:var(--ink2)}
svg.section .plate{fill:var(--sheet)}
.hand{display:grid;grid-template-columns:auto minmax(0,1fr);gap:8px 14px;align-items:center;margin-top:10px}
.hand button{font:inherit;min-width:72px;min-height:44px;color:inherit;background:none;border:1px solid var(--ink);cursor:pointer}
.hand output{grid-column:2;font-weight:600}
:focus-visible{outline:2px solid #1f5fa8;outline-offset:2px}
.table-box{overflow-x:auto;margin:14px 0 8px}
.table-box table{border-collapse:collapse;width:100%}
.table-box caption{text-align:left}
.table-box :is(th,td){text-align:left;vertical-align:top;padding:5px 14px 5px 0;border-bottom:1px solid var(--hair)}
.table-box thead th{vertical-align:bottom;color:var(--ink2);font-weight:400}
.table-box tbody th{font-weight:600}
.table-box .r{text-align:right}
.table-box td{min-width:3em}
.table-box td.r{white-space:nowrap}
.table-box th[scope=row]{position:sticky;left:0;background:var(--sheet)}
.table-box .note td:nth-child(2),.table-box .run td:not(:last-child){white-space:nowrap}
.less,.table-box .below td{color:var(--ink2);font-size:13px}
.less{display:block;line-height:1.3}
.below span{position:sticky;left:0;display:inline-block;max-width:calc(100vw - 34px)}
.chart,.map{max-width:760px}
figure>.chart{margin:18px 0 0}
.chart-title{margin:0 0 6px;font-weight:600}
.chart .field{position:relative;height:250px;margin:0 12px 26px 46px;border-left:1px solid var(--ink);border-bottom:1px solid var(--ink)}
.chart .field svg{position:absolute;inset:0;height:100%;max-height:none;overflow:visible}
.chart .field.ended{margin-right:132px}
.chart .field svg.gutter{left:100%;right:auto;width:24px}
.chart .led{fill:none;stroke:var(--ink2);stroke-width:.9;vector-effect:non-scaling-stroke}
.chart .field .end{left:calc(100% + 28px);transform:translateY(-50%)}
.end b,.key b{color:var(--ink)}
.end i{font-style:normal}
.chart .field span{position:absolute;font-size:13px;line-height:16px;white-space:nowrap;color:var(--ink2)}
.chart .up{right:100%;padding-right:6px;transform:translateY(-50%)}
.chart .across{top:100%;padding-top:5px;transform:translateX(-50%)}
.chart .field .limit-name{right:0;padding:0 3px;color:var(--ink);background:var(--sheet);transform:translateY(-115%)}
.chart .field .mark{width:0;height:0;color:var(--ink)}
.chart .field .mark svg{position:absolute;inset:auto;left:-7px;top:-7px;width:14px;height:14px;overflow:visible}
.chart .field .mark b{position:absolute;left:9px;top:-22px}
.chart .field .mark.under-it b{top:6px}
.chart .field .mark.turned b{left:auto;right:9px}
.verdict-part{fill:none;stroke:currentColor;stroke-width:2.6}
.verdict-part.full{fill:currentColor;stroke:none}
.chart .under{fill:var(--sheet)}
.chart .key svg.point{width:14px;height:14px}
.chart .field .limit-name.left{right:auto;left:0}
.chart .field .limit-name.below{transform:translateY(15%)}
.chart .field .now{top:0;bottom:0;border-left:1px solid var(--ink)}
.chart .now i{position:absolute;left:-6.5px;width:12px;height:12px;margin-top:-6px;border-radius:50%;background:var(--ink);border:2px solid var(--sheet)}
.axis-name{font-size:13px;color:var(--ink2);text-align:right;max-width:none;margin:0 12px 6px 0}
.chart :is(.line,.rule,.limit){fill:none;vector-effect:non-scaling-stroke}
.chart .rule{stroke:var(--hair)}
.chart .limit{stroke:var(--ink);stroke-width:1.2;stroke-dasharray:3 3}
.chart .line{stroke-width:2.2;stroke-linejoin:round}
.look-0{stroke:var(--a);stroke-dasharray:8 3.5}
.look-1{stroke:var(--b)}
.look-2{stroke:var(--c);stroke-dasharray:10 3 2 3}
.look-3{stroke:var(--ink);stroke-dasharray:2 4}
.look-4{stroke:var(--e);stroke-dasharray:16 5}
.look-5{stroke:var(--f);stroke-dasharray:10 3 2 3 2 3}
.look-6{stroke:var(--g);stroke-dasharray:2 4 2 9}
.look-7{stroke:var(--h);stroke-dasharray:14 3 5 3}
.key{list-style:none;display:flex;flex-wrap:wrap;gap:4px 18px;margin:6px 0 0;padding:0;font-size:14px}
.key li{display:flex;gap:8px;align-items:center}
.key svg{flex:none;overflow:visible}
.chart .key svg{width:36px}
.map-field{display:grid;grid-template-columns:auto minmax(0,1fr);gap:4px 6px;font-size:13px;line-height:16px;color:var(--ink2)}
.map-up{display:flex;flex-direction:column;justify-content:space-between;text-align:right;white-space:nowrap}
.map-across{grid-column:2;display:flex;justify-content:space-between;gap:8px}
.map pattern path{stroke:var(--ink2)}
.map pattern circle{fill:var(--ink)}
.map rect{shape-rendering:crispEdges}
.map .no-pour{fill:var(--none)}
.map .frame{fill:none;stroke:var(--ink)}
.map .feeder{fill:none;stroke:var(--ink);stroke-width:1.3}
.map .set{fill:none;stroke:var(--ink);stroke-width:3}
.map .key svg{width:28px}
details:not(.behind){max-width:80ch}
summary{cursor:pointer;padding:8px 0}
.behind>summary{width:max-content;max-width:100%;min-height:44px;padding:9px 14px;border:1px solid var(--ink);font-weight:600}
.behind[open]>summary{margin-bottom:12px}
.shop-card{margin:0 auto}
a{color:inherit}
@media (max-width:699px){svg.section.wide{display:none!important}svg.section.narrow{display:block!important}body{padding:0 0 40px}body>header,body>section,body>footer{padding:14px 16px;margin-bottom:14px;border-left:0;border-right:0}${NARROW_TABLES}.chart .field{height:200px}.chart .field.ended{margin-right:46px}.end i{display:none}}
@media print{body{background:none;padding:0}body>section{break-inside:auto;border:0;border-top:1px solid #000}body>section>h2{break-after:avoid}figure,tr,li{break-inside:avoid}body>section:has(>.shop-card,>.behind[open]>.shop-card){padding:0;border:0;margin:0}body>section:has(>.shop-card,>.behind[open]>.shop-card)>:is(.kind,h2,p){display:none}details:not([open]),summary{display:none}.table-box{overflow:visible}.hand,.chart .field .now{display:none}}
`;
