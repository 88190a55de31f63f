package galena.packet.sheet;

import galena.build.figure.Figure;
import galena.build.folder.Probe;
import galena.build.predict.PointReading;
import galena.build.predict.Prediction.Oscillation;
import galena.build.predict.Prediction.Spectrum;
import galena.build.quantity.Unit;
import galena.packet.page.Page.Block;
import galena.packet.page.Page.Grid;
import galena.packet.page.Page.Paragraph;
import galena.packet.page.Page.Section;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** What is read at the test points, and how strong each harmonic is. */
final class ReadingsSheet {
    private static final int HARMONICS = 5;

    private ReadingsSheet() {}

    static Optional<Section> of(Findings findings) {
        if (findings.oscillation().isEmpty()) return Optional.empty();
        Oscillation oscillation = findings.oscillation().get();
        List<Block> blocks = new ArrayList<>();
        List<PointReading> points = findings.expected().points();
        if (!points.isEmpty()) {
            blocks.add(table(points, oscillation));
            findings.expected().silent().forEach(s -> blocks.add(new Paragraph("With its probe " + s + ".")));
        }
        if (!oscillation.spectra().isEmpty()) {
            blocks.add(harmonics(oscillation));
        }
        return Optional.of(new Section("readings", "What you should read", blocks));
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
}
