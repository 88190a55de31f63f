package galena.build.guard;

import galena.build.folder.Build;
import galena.build.guard.GuardReport.Drift;
import galena.build.guard.GuardReport.Lead;
import galena.build.guard.GuardReport.Part;
import galena.build.guard.GuardReport.Point;
import galena.build.guard.GuardReport.Probe;
import galena.build.guard.GuardReport.Stray;
import galena.build.guard.GuardReport.Winding;
import galena.build.quantity.Engineering;
import galena.build.quantity.Unit;
import java.util.ArrayList;
import java.util.Comparator;
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
            List<Point> points,
            Drift drift) {
        List<String> words = new ArrayList<>();
        strays.stream()
                .findFirst()
                .ifPresent(s -> words.add("Keep the wiring of " + hotter(s, probes)
                        + " short, still and away from everything: a picofarad from there moves the carrier "
                        + hertz(s.perPicofarad().carrier()) + "."));
        probing(words, probes, points);
        probes.stream()
                .max(Comparator.comparingDouble(p -> Math.abs(p.hand())))
                .filter(p -> Math.abs(p.hand()) > NOTICED / 10)
                .ifPresent(p -> words.add("A hand ten centimetres from " + p.net() + " moves the carrier "
                        + hertz(p.hand()) + ": put that net away from the edge, or behind a grounded sheet."));
        couplings.stream()
                .findFirst()
                .filter(c -> Math.abs(c.moves().carrier()) > 1)
                .ifPresent(c -> words.add("Keep " + c.first()
                        + " and " + c.second()
                        + " apart and at right angles: a coupling of k = 0.001 moves the carrier "
                        + hertz(c.moves().carrier()) + ", the other way with one coil reversed."));
        leads.stream()
                .findFirst()
                .ifPresent(l -> words.add("The lead that tells most is that of " + l.part() + " at " + l.net()
                        + ": ten nanohenries, about a centimetre of wire, move the carrier "
                        + hertz(l.perTenNanohenries().carrier()) + "."));
        heat(words, drift);
        parts.stream()
                .filter(p -> build.part(p.value().split(" ")[0]).isPresent())
                .findFirst()
                .ifPresent(p -> words.add("The value that tells most is " + p.value()
                        + ": one percent moves the carrier "
                        + hertz(p.perPercent().carrier()) + ", "
                        + Engineering.print(Math.abs(p.perPercent().carrier()) / carrier, Unit.FRACTION, 2) + "."));
        return List.copyOf(words);
    }

    /** Of a stray's two nets the one at which a hand does more. */
    private static String hotter(Stray stray, List<Probe> probes) {
        return probes.stream()
                .filter(p -> p.net().equals(stray.from()) || p.net().equals(stray.to()))
                .max(Comparator.comparingDouble(p -> Math.abs(p.hand())))
                .map(Probe::net)
                .orElse(stray.from());
    }

    private static void probing(List<String> words, List<Probe> probes, List<Point> points) {
        probes.stream()
                .filter(p -> p.tenToOne().filter(h -> Math.abs(h) < NOTICED).isPresent())
                .map(Probe::net)
                .reduce((a, b) -> a + ", " + b)
                .ifPresent(nets -> words.add("A 10:1 probe may touch " + nets
                        + " without moving the carrier by more than " + Engineering.exact(NOTICED, Unit.HERTZ) + "."));
        probes.stream()
                .filter(p -> p.tenToOne().filter(h -> Math.abs(h) < NOTICED).isEmpty())
                .findFirst()
                .ifPresent(p -> words.add("Keep the probe off " + p.net() + ": it "
                        + p.tenToOne().map(h -> "moves the carrier " + hertz(h)).orElse("stops the oscillation")
                        + "; listen on a receiver instead, or couple through a turn of wire."));
        for (Point point : points) {
            String does =
                    point.hertz().map(h -> "moves the carrier " + hertz(h)).orElse("stops the oscillation");
            words.add("At " + point.name() + " your " + point.probe() + " probe " + does + ".");
        }
    }

    private static void heat(List<String> words, Drift drift) {
        double perTen = drift.perTenKelvin().carrier(),
                perVolt = drift.perVolt().carrier();
        String temperature = "Ten degrees warmer, the carrier moves " + hertz(perTen);
        if (!drift.byPart().isEmpty()) {
            temperature +=
                    "; the largest share is that of " + drift.byPart().get(0).part() + ", "
                            + hertz(drift.byPart().get(0).hertz());
        }
        words.add(temperature + ".");
        if (!drift.compensation().isEmpty() && Math.abs(perTen) > NOTICED / 5) {
            words.add("To compensate: " + drift.compensation() + ".");
        }
        if (Math.abs(perVolt) > 1) words.add("The supply pushes the carrier " + hertz(perVolt) + " a volt.");
    }

    private static String hertz(double value) {
        return (value < 0 ? "down " : "up ") + Engineering.print(Math.abs(value), Unit.HERTZ, 2);
    }
}
