package galena.packet.page;

/** Style sheets: a notebook's page on a screen, and on A4. */
final class PageStyle {
    private PageStyle() {}

    static final String SCREEN =
            """
            :root{color-scheme:light dark;--paper:#fbfaf5;--ink:#2b2b28;--soft:#55534c;--rule:#c9584a;--grid:#cfd5d6;--warn:#f3e7c4}
            @media (prefers-color-scheme:dark){:root{--paper:#1f2124;--ink:#e6e3d8;--soft:#b5b1a4;--rule:#c9584a;--grid:#3a434b;--warn:#4a4020}}
            html{background:var(--paper);color:var(--ink);font:16px/1.5 "DejaVu Sans","Segoe UI","Helvetica Neue",Arial,sans-serif}
            body{max-width:60rem;margin:0 auto;padding:1rem 1.2rem 4rem}
            h1,h2{font-family:"DejaVu Serif",Georgia,"Times New Roman",serif;font-weight:normal;line-height:1.2}
            h1{margin-bottom:.2rem}
            h2{margin-top:2.5rem;border-bottom:1px solid var(--rule);padding-bottom:.2rem}
            .subtitle,.trace,caption,figcaption{color:var(--soft);font-style:italic}
            nav ol{columns:2 16rem;padding-left:1.5rem}
            nav a{color:inherit}
            .caution{background:var(--warn);padding:.6rem .8rem;border-left:4px solid var(--rule)}
            .wide{overflow-x:auto}
            table{border-collapse:collapse;margin:1rem 0;font-size:.9rem;min-width:60%}
            caption{text-align:left;padding-bottom:.3rem}
            th,td{text-align:left;vertical-align:top;padding:.25rem .8rem .25rem 0;border-bottom:1px solid var(--grid)}
            thead th{border-bottom:1px solid var(--ink)}
            th{font-weight:600}
            h3{font-weight:600;font-size:1.05rem;margin:1.6rem 0 .4rem}
            .tree{list-style:none;padding-left:1.1rem;margin:.2rem 0;border-left:1px solid var(--grid)}
            .short{white-space:nowrap}
            .index{columns:2 16rem;list-style:none;padding:0;font-size:.9rem}
            figure{margin:1.2rem 0}
            figure svg{display:block;width:100%;min-width:34rem;max-width:52rem}
            li{margin:.3rem 0}
            .trace{overflow-wrap:anywhere;font-size:.8rem}
            @media screen and (max-width:40rem){
            body{padding:1rem .8rem 3rem}
            table,tbody,tr,th,td,caption{display:block}
            thead{display:none}
            tr{border-bottom:1px solid var(--grid);padding:.4rem 0}
            th[scope=row]{border:0;padding:0}
            td{border:0;padding:.05rem 0}
            td:empty{display:none}
            td[data-label]::before{content:attr(data-label) ": ";color:var(--soft);font-style:italic}
            .short{white-space:normal}
            figure svg{min-width:30rem}
            }
            @media print{html{font-size:11pt}.wide{overflow:visible}figure,table{break-inside:avoid}nav{display:none}}
            """;

    private static final String PAPER =
            """
            @page{size:A4;margin:18mm 17mm 20mm 17mm;@bottom-left{content:"TRACE";font-family:Packet;font-size:7pt;color:#55534c}
            @bottom-right{content:counter(page) " / " counter(pages);font-family:Packet;font-size:8pt;color:#55534c}}
            body{font-family:Packet;font-size:9.5pt;line-height:1.4;color:#2b2b28;margin:0}
            h1{font-size:22pt;font-weight:normal;margin:0 0 2mm 0}
            h2{font-size:14pt;font-weight:normal;border-bottom:0.5pt solid #c9584a;margin:8mm 0 3mm 0;padding-bottom:1mm;page-break-after:avoid}
            .subtitle,.trace,caption,figcaption{color:#55534c}
            caption,figcaption{font-size:8.5pt;text-align:left;padding:1mm 0}
            nav{margin:4mm 0}
            nav a{color:#2b2b28;text-decoration:none}
            nav a:after{content:leader(".") target-counter(attr(href),page)}
            .caution{background-color:#f3e7c4;border-left:2pt solid #c9584a;padding:2mm 3mm}
            table{border-collapse:collapse;width:100%;font-size:8.5pt;margin:2mm 0 4mm 0;-fs-table-paginate:paginate}
            tr{page-break-inside:avoid}
            .brief{page-break-inside:avoid;-fs-table-paginate:auto}
            th,td{text-align:left;vertical-align:top;padding:0.8mm 3mm 0.8mm 0;border-bottom:0.3pt solid #cfd5d6;font-weight:normal}
            thead th{border-bottom:0.6pt solid #2b2b28;color:#55534c}
            h3{font-size:11pt;font-weight:normal;margin:4mm 0 1mm 0;page-break-after:avoid}
            figure{margin:3mm 0;page-break-inside:avoid}
            .drawing,.pair{position:relative}
            .pair figcaption{position:absolute;left:127mm;top:6mm;width:49mm}
            .short{white-space:nowrap}
            .label{position:absolute;line-height:1;white-space:nowrap}
            .tree{list-style-type:none;padding-left:4mm;margin:0.5mm 0 0.5mm 0;border-left:0.3pt solid #cfd5d6}
            .index{list-style-type:none;padding:0;font-size:8.5pt}
            .index li{display:inline-block;width:56mm}
            .index a{color:#2b2b28;text-decoration:none}
            li{margin:0.7mm 0}
            .trace{font-size:7pt}
            """;

    /** Every printed page bears the trace, so that a loose sheet can be matched to its build. */
    static String paper(String trace) {
        return PAPER.replace("TRACE", trace.replace("\\", "").replace("\"", ""));
    }
}
