package galena.build.wiring;

import galena.build.folder.Build;
import galena.build.folder.Calibration;
import galena.build.folder.Coupled;
import galena.build.folder.Overlay;
import galena.build.folder.PartEntry;
import galena.build.folder.Stray;
import galena.build.source.BadInputException;
import galena.build.source.Nearest;
import galena.build.source.Place;
import galena.build.source.Problem;
import galena.build.source.Problems;
import java.util.ArrayList;
import java.util.Collection;
import java.util.List;
import java.util.Set;

/** Checks that an overlay fits its build: it comes from commands, pages and files, and may be of another version of it. */
final class OverlayChecks {
    private static final double COLDEST = -40;
    private static final double HOTTEST = 85;

    private final Build build;
    private final Problems problems = new Problems();

    private OverlayChecks(Build build) {
        this.build = build;
    }

    static void check(Build build, Overlay overlay) throws BadInputException {
        OverlayChecks checks = new OverlayChecks(build);
        checks.adjustments(overlay);
        List<Stray> strays = new ArrayList<>(overlay.strays());
        List<Coupled> couplings = new ArrayList<>(overlay.couplings());
        overlay.calibration().map(Calibration::strays).ifPresent(strays::addAll);
        overlay.calibration().map(Calibration::couplings).ifPresent(couplings::addAll);
        checks.strays(strays);
        checks.couplings(couplings);
        overlay.probes()
                .forEach(point -> checks.known(
                        "probes", "test point", point, build.points().keySet()));
        overlay.calibration().ifPresent(c -> c.parts()
                .keySet()
                .forEach(part ->
                        checks.known("calibration", "part", part, build.parts().keySet())));
        overlay.temperature().ifPresent(checks::temperature);
        checks.problems.throwIfAny();
    }

    private void adjustments(Overlay overlay) {
        for (String name : overlay.adjustments().keySet())
            known("adjustments", "adjustment", name, build.adjustments());
    }

    private void strays(List<Stray> strays) {
        Set<String> nets = build.nets();
        nets.add(galena.engine.circuit.Circuit.GROUND);
        for (Stray stray : strays) {
            known("strays", "net", stray.from(), nets);
            known("strays", "net", stray.to(), nets);
            if (stray.from().equals(stray.to()))
                add("strays", "a stray begins and ends at " + stray.from(), "It lies between two nets.");
        }
    }

    private void couplings(List<Coupled> couplings) {
        List<String> coils = build.parts().values().stream()
                .filter(part -> part.kind().isCoil())
                .map(PartEntry::name)
                .toList();
        for (Coupled coupled : couplings) {
            known("couplings", "coil", coupled.first(), coils);
            known("couplings", "coil", coupled.second(), coils);
            if (coupled.first().equals(coupled.second()))
                add("couplings", "couples " + coupled.first() + " with itself", "A coupling joins two coils.");
        }
    }

    private void temperature(double celsius) {
        if (celsius >= COLDEST && celsius <= HOTTEST) return;
        add(
                "temperature",
                celsius + " °C is out of range",
                "Predictions hold from " + COLDEST + " to " + HOTTEST + " °C.");
    }

    private void known(String path, String what, String name, Collection<String> known) {
        if (known.contains(name)) return;
        String all = known.isEmpty() ? "The build has none." : "The build has " + String.join(", ", known) + ".";
        problems.add(new Problem(
                place(),
                path,
                "the build has no " + what + " \"" + name + '"',
                all,
                Nearest.to(name, known).map(n -> "Nearest: " + n)));
    }

    private void add(String path, String found, String rule) {
        problems.add(new Problem(place(), path, found, rule));
    }

    private static Place place() {
        return new Place("overlay", 1, 1);
    }
}
