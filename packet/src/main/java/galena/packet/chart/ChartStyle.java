package galena.packet.chart;

/**
 * Paper, ink and lines. Inks were chosen dark on light paper and light on dark, with hues that stay apart for the common kinds of
 * colour blindness; dashes and markers carry the same difference without them.
 */
final class ChartStyle {
    private ChartStyle() {}

    static final String SHEET =
            """
            <style>
            .galena{font-family:"DejaVu Sans","Segoe UI","Helvetica Neue",Arial,sans-serif;font-size:12px}
            .galena .paper{fill:#fbfaf5}
            .galena text{fill:#2b2b28}
            .galena .title{font-family:"DejaVu Serif",Georgia,"Times New Roman",serif;font-size:16px}
            .galena .axis,.galena .note{font-style:italic;fill:#55534c}
            .galena .number{font-size:11px;fill:#55534c}
            .galena path{fill:none;stroke-linejoin:round;stroke-linecap:butt}
            .galena .rule{stroke:#c9584a;stroke-width:.8}
            .galena .grid{stroke:#b9c7d2;stroke-width:.6}
            .galena .edge{stroke:#2b2b28;stroke-width:1}
            .galena .window{fill:#e9dfb4;fill-opacity:.5}
            .galena .limit{stroke:#8a7a2e;stroke-width:.8;stroke-dasharray:6 3}
            .galena .mark{fill:#2b2b28}
            .galena .ink{stroke-width:1.7}
            .galena .marker{fill:#fbfaf5;stroke-width:1.3}
            .galena .line1{stroke:#1d4b7c}.galena .line2{stroke:#a6431a}.galena .line3{stroke:#22694c}.galena .line4{stroke:#6b3f7d}
            .galena .line2 .ink{stroke-dasharray:8 4}.galena .line3 .ink{stroke-dasharray:2 3}
            .galena .line4 .ink{stroke-dasharray:10 3 2 3}
            .galena text.name{stroke:none}
            .galena .interval{stroke:none;fill-opacity:.16}
            .galena .line1 .interval,.galena text.line1{fill:#1d4b7c}.galena .line2 .interval,.galena text.line2{fill:#a6431a}
            .galena .line3 .interval,.galena text.line3{fill:#22694c}.galena .line4 .interval,.galena text.line4{fill:#6b3f7d}
            @media screen and (prefers-color-scheme:dark){
            .galena .paper,.galena .marker{fill:#1f2124}
            .galena text{fill:#e6e3d8}
            .galena .axis,.galena .note,.galena .number{fill:#b5b1a4}
            .galena .grid{stroke:#3a434b}
            .galena .edge{stroke:#e6e3d8}
            .galena .mark{fill:#e6e3d8}
            .galena .window{fill:#5c5324}
            .galena .limit{stroke:#c3b055}
            .galena .line1{stroke:#8fc1f0}.galena .line2{stroke:#f0a27a}.galena .line3{stroke:#7fd0aa}.galena .line4{stroke:#cfa3e0}
            .galena .line1 .interval,.galena text.line1{fill:#8fc1f0}.galena .line2 .interval,.galena text.line2{fill:#f0a27a}
            .galena .line3 .interval,.galena text.line3{fill:#7fd0aa}.galena .line4 .interval,.galena text.line4{fill:#cfa3e0}
            }
            @media print{.galena .paper,.galena .marker{fill:#fff}}
            </style>
            """;
}
