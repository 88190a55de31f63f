package galena.build.attempt;

import galena.build.folder.Build;
import galena.build.predict.Running;
import galena.build.spread.Drawn;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.OptionalDouble;

/**
 * A build that was solved and read: the typical one, and copies of it if some were drawn.
 *
 * @param running its solved carrier
 * @param typical read like a copy
 * @param tankQ loaded Q of a separate output tank
 * @param copies drawn, or those of a neighbour carried over, or none
 * @param drawn whether the copies are its own
 * @param standing how it stands to the lines
 */
public record Tried(
        Build build,
        Running running,
        Drawn typical,
        OptionalDouble tankQ,
        List<Drawn> copies,
        boolean drawn,
        Standing standing) {
    /** Beyond this many design margins short, more does not count as worse. */
    private static final double WORST = 6;

    private static final double OF_A_FAILURE = 3;
    private static final double FARTHEST = 3;
    private static final double OF_THE_LIMIT = 4;

    /** Share of copies that must meet every line. */
    public static final double YIELD = 0.95;

    /**
     * @param typical slack of the typical build by line
     * @param failing share of copies that miss each line; 0 or 1 for lines of the typical build
     * @param yield share of copies that miss none
     * @param penalty 0 for a build that meets every line with its design margin in every copy
     */
    public record Standing(Map<Line, Double> typical, Map<Line, Double> failing, double yield, double penalty) {
        public boolean meets() {
            return yield >= YIELD
                    && failing.entrySet().stream().noneMatch(e -> !e.getKey().ofCopies() && e.getValue() > 0);
        }
    }

    public static Tried of(
            Aim aim,
            Build build,
            Running running,
            Drawn typical,
            OptionalDouble tankQ,
            List<Drawn> copies,
            boolean drawn) {
        return new Tried(build, running, typical, tankQ, copies, drawn, standing(aim, build, typical, tankQ, copies));
    }

    private static Standing standing(Aim aim, Build build, Drawn typical, OptionalDouble tankQ, List<Drawn> copies) {
        Map<Line, Double> ofTypical = aim.slack(build, typical);
        Map<Line, Double> failing = new EnumMap<>(Line.class);
        double penalty = 0;
        int good = 0;
        List<Drawn> all = copies.isEmpty() ? List.of(typical) : copies;
        for (Drawn copy : all) {
            boolean met = true;
            for (Map.Entry<Line, Double> e : aim.slack(build, copy).entrySet()) {
                penalty += penalty(e.getKey(), e.getValue()) / all.size();
                if (e.getValue() >= 0) continue;
                met = false;
                failing.merge(e.getKey(), 1.0 / all.size(), Double::sum);
            }
            if (met) good++;
        }
        for (Map.Entry<Line, Double> e : aim.typicalSlack(build, typical, tankQ).entrySet()) {
            ofTypical.put(e.getKey(), e.getValue());
            penalty += penalty(e.getKey(), e.getValue());
            if (e.getValue() < 0) failing.put(e.getKey(), 1.0);
        }
        return new Standing(ofTypical, failing, (double) good / all.size(), penalty);
    }

    private static double penalty(Line line, double slack) {
        double missing = Math.max(0, line.margin() - slack) / line.margin();
        double beyond = slack < 0 ? OF_A_FAILURE + Math.min(FARTHEST, -slack) : 0;
        double weight = line == Line.LIMIT ? OF_THE_LIMIT : 1; // reach gives way to the limit, never the limit to reach
        return weight * (Math.min(WORST, missing) / 2 + beyond);
    }
}
