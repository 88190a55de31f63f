package galena.build.wiring;

import galena.build.folder.Calibration;
import galena.build.source.BadInputException;
import galena.build.source.Place;
import galena.build.source.Problem;
import galena.engine.circuit.Circuit;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/**
 * What is known of a build's unknowns together: alike likely all over the unit cube, or after an accepted calibration where the
 * readings have left them. A calibration is a centre and a triangle of spreads of a normal law of the values that circuits are about
 * straight in ({@link Bend}), cut off at their ends; what it does not name stays as it was.
 */
public final class Knowledge {
    private final List<Unknown> unknowns;
    /** Numbers that the calibration places, in its order. */
    private final int[] placed;

    private final Bend[] bends;
    private final double[] centre;
    private final List<List<Double>> spread;

    private Knowledge(List<Unknown> unknowns, int[] placed, Bend[] bends, double[] centre, List<List<Double>> spread) {
        this.unknowns = unknowns;
        this.placed = placed;
        this.bends = bends;
        this.centre = centre;
        this.spread = spread;
    }

    /** Of unknowns that nothing was read of. */
    static Knowledge before(List<Unknown> unknowns) {
        return new Knowledge(unknowns, new int[0], new Bend[0], new double[0], List.of());
    }

    /** @throws BadInputException when the calibration names what the build has no longer */
    static Knowledge of(List<Unknown> unknowns, List<Calibration.Known> calibrated) throws BadInputException {
        Map<String, Integer> numbers = new LinkedHashMap<>();
        List<Bend> laws = new ArrayList<>();
        for (Unknown unknown : unknowns) {
            for (String key : unknown.keys()) {
                numbers.put(key, numbers.size());
                laws.add(unknown.bend());
            }
        }
        int[] placed = new int[calibrated.size()];
        Bend[] bends = new Bend[placed.length];
        List<Problem> problems = new ArrayList<>();
        for (int k = 0; k < placed.length; k++) {
            String of = calibrated.get(k).of();
            Integer number = numbers.get(of);
            if (number == null) problems.add(gone(of));
            else {
                placed[k] = number;
                bends[k] = laws.get(number);
            }
        }
        if (!problems.isEmpty()) throw new BadInputException(problems);
        double[] centre = calibrated.stream().mapToDouble(Calibration.Known::at).toArray();
        return new Knowledge(
                unknowns,
                placed,
                bends,
                centre,
                calibrated.stream().map(Calibration.Known::spread).toList());
    }

    private static Problem gone(String of) {
        return new Problem(
                new Place("calibration.yaml", 1, 1),
                "unknowns",
                "the build has nothing unknown called \"" + of + '"',
                "A calibration holds for the build that was measured.",
                "Run galena reconcile again, or drop the calibration with galena reconcile --drop.");
    }

    public List<Unknown> unknowns() {
        return unknowns;
    }

    /** How many directions of the unknowns the calibration has fixed the length of; 0 before one. */
    public int directions() {
        return placed.length;
    }

    /** Whether the calibration places this unknown. */
    public boolean places(Unknown unknown) {
        int at = 0;
        for (Unknown each : unknowns) {
            int last = at + each.numbers();
            for (int number : placed) if (each.equals(unknown) && number >= at && number < last) return true;
            at = last;
        }
        return false;
    }

    /** The key of the number that a direction is mostly about. */
    public String about(int direction) {
        double most = -1;
        String about = "";
        for (int k = direction; k < placed.length; k++) {
            double size = Math.abs(spread.get(k).get(direction));
            if (size > most) {
                most = size;
                about = key(placed[k]);
            }
        }
        return about;
    }

    private String key(int number) {
        return unknowns.stream().flatMap(u -> u.keys().stream()).toList().get(number);
    }

    /** Numbers of the cube for numbers drawn from it evenly: themselves, or where the calibration puts them. */
    public double[] placed(double[] u) {
        double[] there = Arrays.copyOf(u, Unknowns.numbers(unknowns));
        double[] drawn = new double[placed.length];
        for (int k = 0; k < placed.length; k++) drawn[k] = Bend.normal(u[placed[k]]);
        put(drawn, there);
        return there;
    }

    /** The typical numbers moved along one direction by so many of its standard deviations. */
    public double[] along(int direction, double deviations) {
        double[] u = new double[Unknowns.numbers(unknowns)];
        Arrays.fill(u, 0.5);
        double[] drawn = new double[placed.length];
        drawn[direction] = deviations;
        put(drawn, u);
        return u;
    }

    private void put(double[] drawn, double[] u) {
        for (int k = 0; k < placed.length; k++) {
            double value = centre[k];
            for (int j = 0; j <= k; j++) value += spread.get(k).get(j) * drawn[j];
            u[placed[k]] = bends[k].cube(value);
        }
    }

    /** The circuit in the middle of what is known: the base where nothing was read. */
    Circuit typical(Circuit base) {
        if (placed.length == 0) return base;
        List<Unknown> named = unknowns.stream().filter(this::places).toList();
        double[] all = along(0, 0), own = new double[Unknowns.numbers(named)];
        int at = 0, to = 0;
        for (Unknown each : unknowns) {
            if (places(each)) for (int k = 0; k < each.numbers(); k++) own[to++] = all[at + k];
            at += each.numbers();
        }
        return Unknowns.drawn(named, base, own);
    }
}
