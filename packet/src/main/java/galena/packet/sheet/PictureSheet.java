package galena.packet.sheet;

import galena.build.figure.Figure;
import galena.build.predict.PointReading;
import galena.build.predict.Prediction.Curve;
import galena.build.predict.Prediction.Oscillation;
import galena.build.predict.Prediction.Spectrum;
import galena.packet.chart.Chart;
import galena.packet.chart.Chart.Axis;
import galena.packet.chart.Chart.Point;
import galena.packet.chart.Chart.Series;
import galena.packet.chart.ChartSvg;
import galena.packet.page.Page.Block;
import galena.packet.page.Page.Drawing;
import galena.packet.page.Page.Paragraph;
import galena.packet.page.Page.Section;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** The pictures to expect on a screen, drawn as one would into a notebook: carrier, spectrum, modulated envelope, trapezoid. */
final class PictureSheet {
    private static final int MOST_SERIES = 4;

    /** Where a stem of the spectrum begins, dBc: below what is certified. */
    private static final double FLOOR = -90;

    /** Stems of one harmonic stand side by side, this share of a harmonic apart. */
    private static final double APART = 0.12;

    private PictureSheet() {}

    static Optional<Section> of(Findings findings) {
        if (findings.oscillation().isEmpty()) return Optional.empty();
        List<Block> blocks = new ArrayList<>();
        blocks.add(new Paragraph(
                "Typical parts; where a screen shows another shape, the fault tables say what to read next."));
        List<PointReading> points = findings.expected().points();
        if (!points.isEmpty()) blocks.add(waveform(points));
        spectrum(findings.oscillation().get()).ifPresent(blocks::add);
        if (findings.prediction().modulation() instanceof Curve curve) {
            ModulationPictures pictures = new ModulationPictures(curve);
            pictures.envelope().ifPresent(blocks::add);
            pictures.trapezoid().ifPresent(blocks::add);
        }
        return Optional.of(new Section("pictures", "What the screen should show", blocks));
    }

    private static Drawing waveform(List<PointReading> points) {
        List<Series> series = new ArrayList<>();
        for (PointReading p : points.subList(0, Math.min(MOST_SERIES, points.size()))) {
            List<Point> line = new ArrayList<>();
            int n = p.wave().size() - 1;
            for (int k = 0; k <= 2 * n; k++)
                line.add(Point.at(k / (n * p.carrier().value()), p.wave().get(k % n)));
            series.add(Series.of(p.point().name(), line));
        }
        Chart chart = new Chart(
                "Carrier at the test points",
                Axis.linear("time", "µs", 1e-6),
                Axis.linear("voltage", "V", 1),
                series,
                List.of(),
                List.of());
        return new Drawing(
                "carrier", "Two periods of the carrier through the probes, unmodulated.", ChartSvg.draw(chart));
    }

    private static Optional<Drawing> spectrum(Oscillation oscillation) {
        List<Series> series = new ArrayList<>();
        List<Spectrum> shown = oscillation.spectra().stream().limit(MOST_SERIES).toList();
        for (int k = 0; k < shown.size(); k++) {
            double beside = APART * (k - (shown.size() - 1) / 2.0);
            List<List<Point>> stems = new ArrayList<>();
            stems.add(stem(1 + beside, 0));
            List<Figure> harmonics = shown.get(k).harmonics();
            for (int h = 2; h < harmonics.size() + 2; h++)
                if (harmonics.get(h - 2) instanceof Figure.Known known) stems.add(stem(h + beside, known.value()));
            series.add(new Series(shown.get(k).quantity(), stems, false));
        }
        if (series.isEmpty()) return Optional.empty();
        Chart chart = new Chart(
                "Spectrum of the carrier",
                Axis.linear("harmonic", "", 1),
                Axis.linear("level against the carrier", "dB", 1),
                series,
                List.of(),
                List.of());
        return Optional.of(new Drawing(
                "spectrum",
                "Harmonics of the carrier, each quantity against its own carrier; what is not drawn lies below what is certified.",
                ChartSvg.draw(chart)));
    }

    private static List<Point> stem(double x, double level) {
        return List.of(Point.at(x, FLOOR), Point.at(x, Math.max(FLOOR, level)));
    }
}
