/** The look of a report on a screen and from its printer. Colours as on the maps. */
import { MAP, STAIN_RAMP } from '../../palette.ts';

const ACCENT = STAIN_RAMP[5];
const PAPER_TINT = '#faf7f0';

export const REPORT_STYLE = `
*{box-sizing:border-box}
body{font:16px/1.55 Inter,'Noto Sans','DejaVu Sans',Helvetica,Arial,sans-serif;color:${MAP.ink};background:#fff;max-width:60rem;margin:0 auto;padding:2rem 1.25rem;font-variant-numeric:tabular-nums}
h1{font-size:2rem;line-height:1.15;margin:0;letter-spacing:-.015em}
h2{font-size:1.3rem;line-height:1.25;margin:2.75rem 0 .6rem;padding-top:.6rem;border-top:2px solid ${ACCENT}}
h2.small-head{font-size:1.05rem;margin:1.75rem 0 .4rem;padding:0;border:0}
h3{font-size:1.05rem;margin:1.75rem 0 .4rem}
p{margin:.5rem 0}ul{margin:.5rem 0;padding-left:1.2rem}li{margin:.3rem 0}
.about{color:${MAP.quiet};margin:.3rem 0 1.25rem}
.lead{font-size:1.15rem;line-height:1.45;margin:0 0 1rem}
.quiet,.note{color:${MAP.quiet};font-size:.875rem}.note{font-size:.8rem;margin:.25rem 0 1.25rem;overflow-wrap:anywhere}
.small{font-size:.925rem}.figure{white-space:nowrap}
.key-figures{display:grid;grid-template-columns:repeat(auto-fit,minmax(13rem,1fr));gap:.75rem;margin:1rem 0}
.key-figures div{background:${PAPER_TINT};border-left:4px solid ${ACCENT};padding:.6rem .9rem;display:flex;flex-direction:column}
.key-figures dt{font-size:.875rem;line-height:1.35;flex:1}.key-figures dd{margin:0}
.key-figures .value{font-size:1.75rem;font-weight:700;line-height:1.3;letter-spacing:-.01em}.key-figures .range{font-size:.875rem;color:${MAP.quiet}}
@media(min-width:48rem){.beside{display:grid;grid-template-columns:64fr 36fr;gap:1.25rem;align-items:stretch}.beside figure{margin:1rem 0}.beside .key-figures{grid-template-columns:1fr}}
.notice{border:1px solid ${MAP.ink};padding:.4rem .9rem;margin:1rem 0;font-size:.925rem}
figure{margin:1.25rem 0}figure svg{width:100%;height:auto;display:block}figcaption{color:${MAP.quiet};font-size:.875rem;margin-top:.35rem}
.scroll{overflow-x:auto;margin:1rem 0 0}
table{border-collapse:collapse;width:100%;min-width:38rem;font-size:.875rem;line-height:1.35}
caption{text-align:left;font-weight:700;font-size:.95rem;padding:0 0 .35rem}
.unseen{position:absolute;width:1px;height:1px;overflow:hidden;clip-path:inset(50%);white-space:nowrap}
th,td{padding:.3rem .5rem;vertical-align:top;text-align:left;border-bottom:1px solid #ddd6ca}
th:first-child,td:first-child{padding-left:0}th:last-child,td:last-child{padding-right:0}
thead th{vertical-align:bottom;border-bottom:1.5px solid ${MAP.ink}}tbody th{font-weight:400}
.right{text-align:right}
footer{color:${MAP.quiet};font-size:.8rem;margin-top:3rem;border-top:1px solid #ddd6ca}
@media print{.beside{display:grid;grid-template-columns:64fr 36fr;gap:4mm}.beside .key-figures{grid-template-columns:1fr}body{padding:0;max-width:none;font-size:9.5pt}.scroll{overflow:visible}table{min-width:0}
h2,h3,caption{break-after:avoid}tr,figure,.notice,.key-figures{break-inside:avoid}.new-page{break-before:page;border-top:0;padding-top:0}
thead{display:table-header-group}p,li{orphans:2;widows:2}
*{-webkit-print-color-adjust:exact;print-color-adjust:exact}}`;
