package galena.build.guard;

import galena.build.folder.Build;
import galena.build.guard.GuardReport.Drift;
import galena.build.guard.GuardReport.Lead;
import galena.build.guard.GuardReport.Part;
import galena.build.guard.GuardReport.Probe;
import galena.build.guard.GuardReport.Stray;
import galena.build.guard.GuardReport.Winding;
import galena.build.quantity.Engineering;
import galena.build.quantity.Unit;
import java.util.ArrayList;
import java.util.List;

/** What the numbers mean at the bench, in words, most useful first. */
final class Advice {
    /** Off by more than this a digitally tuned set sounds wrong: the pass line for an LC carrier, common practice. */
    private static final double NOTICED = 500;

    private Advice() {}

    static List<String> of(
            Build build,
            double carrier,
            List<Part> parts,
            List<Stray> strays,
            List<Lead> leads,
            List<Winding> couplings,
            List<Probe> probes,
            Drift drift) {
        List<String> words = new ArrayList<>();
        strays.stream()
                .findFirst()
                .ifPresent(s -> words.add("Keep the leads between " + s.from() + " and " + s.to()
                        + " short and still: each picofarad there moves the carrier "
                        + hertz(s.perPicofarad().carrier()) + "."));
        probes.stream()
                .filter(p -> Math.abs(p.tenToOne()) < NOTICED)
                .map(Probe::net)
                .reduce((a, b) -> a + ", " + b)
                .ifPresent(nets -> words.add("A 10:1 probe may touch " + nets
                        + " without moving the carrier by more than " + Engineering.exact(NOTICED, Unit.HERTZ) + "."));
        probes.stream()
                .findFirst()
                .filter(p -> Math.abs(p.tenToOne()) >= NOTICED)
                .ifPresent(p -> words.add("Keep the probe off " + p.net() + ": it moves the carrier "
                        + hertz(p.tenToOne()) + "; listen on a receiver instead, or couple through a turn of wire."));
        probes.stream()
                .filter(p -> Math.abs(p.hand()) > NOTICED / 10)
                .findFirst()
                .ifPresent(p -> words.add("A hand ten centimetres from " + p.net() + " moves the carrier "
                        + hertz(p.hand()) + ": put that net away from the edge, or behind a grounded sheet."));
        couplings.stream()
                .filter(c -> Math.abs(c.hertz()) > 1)
                .findFirst()
                .ifPresent(c -> words.add("Keep " + c.first()
                        + " and " + c.second()
                        + " apart and at right angles: a coupling of k = 0.001 moves the carrier "
                        + hertz(c.hertz()) + ", the other way with one coil reversed."));
        leads.stream()
                .findFirst()
                .ifPresent(l -> words.add("The lead that tells most is that of " + l.part()
                        + ": ten nanohenries, about a centimetre of wire, move the carrier " + hertz(l.hertz()) + "."));
        String temperature = "Ten degrees warmer, the carrier moves " + hertz(drift.perTenKelvin());
        if (!drift.byPart().isEmpty()) {
            temperature += ", most of it from " + drift.byPart().get(0).part();
        }
        words.add(temperature + ".");
        if (!drift.compensation().isEmpty() && Math.abs(drift.perTenKelvin()) > NOTICED / 5) {
            words.add("To compensate: " + drift.compensation() + ".");
        }
        if (Math.abs(drift.perVolt()) > 1) {
            words.add("The supply pushes the carrier " + hertz(drift.perVolt()) + " a volt.");
        }
        parts.stream()
                .filter(p -> build.part(p.value().split(" ")[0]).isPresent())
                .findFirst()
                .ifPresent(p -> words.add("The value that tells most is " + p.value()
                        + ": one percent moves the carrier "
                        + hertz(p.perPercent().carrier()) + ", "
                        + Engineering.print(Math.abs(p.perPercent().carrier()) / carrier, Unit.FRACTION, 2) + "."));
        return List.copyOf(words);
    }

    private static String hertz(double value) {
        return (value < 0 ? "down " : "up ") + Engineering.print(Math.abs(value), Unit.HERTZ, 2);
    }
}
