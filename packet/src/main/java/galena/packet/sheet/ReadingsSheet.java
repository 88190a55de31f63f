package galena.packet.sheet;

import galena.build.figure.Figure;
import galena.build.folder.Probe;
import galena.build.predict.PointReading;
import galena.build.predict.Prediction.Oscillation;
import galena.build.predict.Prediction.Spectrum;
import galena.build.quantity.Unit;
import galena.packet.chart.Chart;
import galena.packet.chart.Chart.Axis;
import galena.packet.chart.Chart.Point;
import galena.packet.chart.Chart.Series;
import galena.packet.chart.ChartSvg;
import galena.packet.page.Page.Block;
import galena.packet.page.Page.Drawing;
import galena.packet.page.Page.Grid;
import galena.packet.page.Page.Paragraph;
import galena.packet.page.Page.Section;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** What is read at the test points, and the pictures of carrier and spectrum. */
final class ReadingsSheet {
    private static final int HARMONICS = 5;
    private static final int MOST_SERIES = 4;

    private ReadingsSheet() {}

    static Optional<Section> of(Findings findings) {
        if (findings.oscillation().isEmpty()) return Optional.empty();
        Oscillation oscillation = findings.oscillation().get();
        List<Block> blocks = new ArrayList<>();
        List<PointReading> points = findings.expected().points();
        if (!points.isEmpty()) {
            blocks.add(table(points, oscillation));
            findings.expected().silent().forEach(s -> blocks.add(new Paragraph("With its probe " + s + ".")));
            blocks.add(waveform(points));
        }
        if (!oscillation.spectra().isEmpty()) {
            blocks.add(harmonics(oscillation));
            spectrum(oscillation).ifPresent(blocks::add);
        }
        return Optional.of(new Section("readings", "What you should read and see", blocks));
    }

    private static Grid table(List<PointReading> points, Oscillation oscillation) {
        List<List<String>> rows = points.stream()
                .map(p -> List.of(
                        p.point().name() + " (" + p.point().at() + ")",
                        p.point().probe().map(ReadingsSheet::probe).orElse("none: as the circuit has it"),
                        Wording.both(p.peak()),
                        Wording.number(p.highest() - p.lowest(), Unit.VOLT, 3),
                        Wording.both(p.mean()),
                        Wording.number(
                                p.carrier().value() - oscillation.carrier().value(), Unit.HERTZ, 2)))
                .toList();
        return new Grid(
                "Test points through the probe named, its load counted; unmodulated.",
                List.of("Point", "Probe", "Carrier, peak", "Peak to peak, typical", "Mean", "Probe moves the carrier"),
                rows);
    }

    private static String probe(Probe probe) {
        return probe.name() + " (" + Wording.number(probe.resistance(), Unit.OHM, 2) + ", "
                + Wording.number(probe.capacitance(), Unit.FARAD, 2) + ")";
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
                "carrier", "Two periods of the carrier through the probes, typical parts.", ChartSvg.draw(chart));
    }

    private static Grid harmonics(Oscillation oscillation) {
        List<String> head = new ArrayList<>(List.of("Quantity", "Carrier, peak"));
        for (int h = 2; h <= HARMONICS; h++) head.add(h + "f");
        List<List<String>> rows = new ArrayList<>();
        for (Spectrum s : oscillation.spectra()) {
            List<String> row = new ArrayList<>(List.of(s.quantity(), Wording.both(s.fundamental())));
            for (int h = 2; h <= HARMONICS; h++)
                row.add(
                        s.harmonics().size() > h - 2 && s.harmonics().get(h - 2) instanceof Figure.Known k
                                ? Wording.both(k)
                                : "—");
            rows.add(row);
        }
        return new Grid("Harmonics, decibels against the carrier in the same quantity.", head, rows);
    }

    private static Optional<Drawing> spectrum(Oscillation oscillation) {
        List<Series> series = new ArrayList<>();
        for (Spectrum s : oscillation.spectra()) {
            List<Point> line = new ArrayList<>(List.of(Point.at(1, 0)));
            for (int h = 2; h < s.harmonics().size() + 2; h++)
                if (s.harmonics().get(h - 2) instanceof Figure.Known k)
                    line.add(new Point(h, k.value(), k.low(), k.high()));
                else break;
            if (series.size() < MOST_SERIES) series.add(Series.of(s.quantity(), line));
        }
        if (series.isEmpty()) return Optional.empty();
        Chart chart = new Chart(
                "Spectrum of the carrier",
                Axis.linear("harmonic", "", 1),
                Axis.linear("level", "dBc", 1),
                series,
                List.of(),
                List.of());
        return Optional.of(new Drawing(
                "spectrum",
                "Harmonics with the bands that tolerances give them; the lines only join them.",
                ChartSvg.draw(chart)));
    }
}
