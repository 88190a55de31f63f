package galena.packet.sheet;

import galena.build.figure.Figure;
import galena.build.predict.PointReading;
import galena.build.predict.Prediction;
import galena.build.predict.Prediction.Curve;
import galena.build.predict.Prediction.Oscillation;
import galena.build.rules.LocalRules;
import galena.packet.sheet.PartsList.Line;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;

/** The packet in plain text, short enough for a post or under a video. */
public final class Summary {
    private Summary() {}

    public static String of(Findings findings) {
        List<String> lines = new ArrayList<>();
        Prediction prediction = findings.prediction();
        lines.add(prediction.name());
        lines.add("");
        findings.oscillation().ifPresent(o -> carrier(findings, o, lines));
        if (prediction.running() instanceof Prediction.Silent silent)
            lines.add("It does not oscillate as it stands: " + silent.reason());
        lines.add("");
        lines.add("Parts: "
                + String.join(
                        "; ", PartsList.of(findings).stream().map(Summary::part).toList()));
        lines.add("");
        List<String> readings = new ArrayList<>();
        for (PointReading p : findings.expected().points())
            readings.add(p.point().name() + " (" + p.point().at()
                    + p.point().probe().map(r -> ", probe " + r.name()).orElse("") + "): " + Wording.both(p.peak())
                    + " peak, mean " + Wording.both(p.mean()));
        for (Figure f : prediction.rest().voltages())
            if (f instanceof Figure.Known k) readings.add(k.at() + " at rest: " + Wording.both(k));
        if (!readings.isEmpty()) {
            lines.add("Expect:");
            readings.forEach(r -> lines.add("  " + r));
            lines.add("");
        }
        Optional<LocalRules> rules = LocalRules.of(findings.build().intent());
        lines.add("Transmitting is regulated: your regulator and licensed practice decide"
                + rules.map(r -> " (" + r.region() + ": " + r.check() + ")").orElse("") + ".");
        lines.add("Inputs " + prediction.digest().substring(0, 16));
        return String.join("\n", lines) + "\n";
    }

    private static String part(Line line) {
        return line.reference() + " " + line.value();
    }

    private static void carrier(Findings findings, Oscillation o, List<String> lines) {
        lines.add("Carrier " + Wording.both(o.carrier()) + " as set; draws " + Wording.both(o.supplyCurrent())
                + "; battery life " + Wording.both(o.batteryHours()) + ".");
        if (findings.prediction().modulation() instanceof Curve c)
            lines.add("Modulation by the programme: +" + Wording.value(c.positivePeak()) + " / −"
                    + Wording.value(c.negativePeak()) + ", envelope distortion " + Wording.value(c.distortion()) + ".");
    }
}
