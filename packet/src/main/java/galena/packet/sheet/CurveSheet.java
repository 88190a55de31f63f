package galena.packet.sheet;

import galena.build.predict.OutputSweep;
import galena.build.predict.Prediction.Curve;
import galena.build.predict.Response;
import galena.build.quantity.Quantity;
import galena.packet.chart.Chart;
import galena.packet.chart.Chart.Along;
import galena.packet.chart.Chart.Axis;
import galena.packet.chart.Chart.Mark;
import galena.packet.chart.Chart.Point;
import galena.packet.chart.Chart.Series;
import galena.packet.chart.Chart.Window;
import galena.packet.chart.ChartSvg;
import galena.packet.page.Page.Block;
import galena.packet.page.Page.Drawing;
import galena.packet.page.Page.Section;
import galena.packet.response.ResponseChart;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** Tuning curves of the trimmers, output curves, the modulation curve and the envelope it makes of a tone. */
final class CurveSheet {
    /** Below this an adjustment does nothing that a curve could show. */
    private static final double WORTH_DRAWING = 1e-4;

    private static final double TUNES_OUTPUT = 0.05;

    private CurveSheet() {}

    static Optional<Section> of(Findings findings) {
        List<Block> blocks = new ArrayList<>();
        findings.oscillation().ifPresent(o -> {
            Optional<Quantity> wanted = findings.build().intent().carrier();
            for (OutputSweep sweep : findings.expected().sweeps()) {
                if (sweep.points().size() < 3) continue;
                double relative = sweep.carrierRange() / o.carrier().value();
                if (relative > WORTH_DRAWING * 50) blocks.add(tuning(sweep, wanted));
                if (sweep.outputRange() > TUNES_OUTPUT) blocks.add(output(sweep));
            }
        });
        if (findings.prediction().modulation() instanceof Curve curve) {
            blocks.add(modulation(curve));
        }
        findings.outlook().audio().ifPresent(response -> blocks.add(audio(response)));
        return blocks.isEmpty() ? Optional.empty() : Optional.of(new Section("curves", "Curves", blocks));
    }

    private static Drawing tuning(OutputSweep sweep, Optional<Quantity> wanted) {
        List<Point> points = sweep.points().stream()
                .map(p -> Point.at(p.position(), p.carrier()))
                .toList();
        List<Window> windows = wanted.map(w -> List.of(new Window(Along.Y, w.value(), w.value(), "wanted " + w.text())))
                .orElse(List.of());
        Chart chart = new Chart(
                "Tuning by " + sweep.part(),
                Axis.linear(sweep.part(), "% of travel", 0.01),
                Axis.linear("carrier", "kHz", 1e3),
                List.of(Series.of("carrier", points)),
                windows,
                marks(sweep, true));
        return new Drawing(
                "tuning-" + sweep.part(),
                "Carrier against the position of " + sweep.part() + ", typical parts.",
                ChartSvg.draw(chart));
    }

    private static Drawing output(OutputSweep sweep) {
        List<Point> points = sweep.points().stream()
                .map(p -> Point.at(p.position(), p.current()))
                .toList();
        Chart chart = new Chart(
                "Output against " + sweep.part(),
                Axis.linear(sweep.part(), "% of travel", 0.01),
                Axis.linear("current in " + sweep.coil() + ", peak", "mA", 1e-3),
                List.of(Series.of("current", points)),
                List.of(),
                marks(sweep, false));
        return new Drawing(
                "output-" + sweep.part(),
                "Carrier current in " + sweep.coil() + " against the position of " + sweep.part() + ", typical parts.",
                ChartSvg.draw(chart));
    }

    /** Where it is set, if a point of the sweep lies there. */
    private static List<Mark> marks(OutputSweep sweep, boolean carrier) {
        return sweep.points().stream()
                .filter(p -> Math.abs(p.position() - sweep.set()) < 1e-9)
                .map(p -> new Mark(p.position(), carrier ? p.carrier() : p.current(), "as set"))
                .toList();
    }

    private static Drawing modulation(Curve curve) {
        List<Point> points = curve.curve().stream()
                .map(p -> Point.at(p.audio(), p.amplitude()))
                .toList();
        Chart chart = new Chart(
                "Static modulation curve",
                Axis.linear("voltage of " + curve.source(), "mV", 1e-3),
                ModulationPictures.axis(curve),
                List.of(Series.of("amplitude", points)),
                List.of(new Window(Along.X, -curve.level(), curve.level(), "programme")),
                List.of());
        return new Drawing(
                "modulation",
                "Carrier amplitude against a slow audio voltage, typical parts; the programme's level is" + " shaded.",
                ChartSvg.draw(chart));
    }

    private static Drawing audio(Response response) {
        return new Drawing(
                "audio",
                "Audio from " + response.source() + " to " + response.net()
                        + ", where it modulates; the carrier at rest. The output tank's own width comes on top.",
                ChartSvg.draw(ResponseChart.of(response)));
    }
}
