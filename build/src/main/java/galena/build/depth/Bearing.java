package galena.build.depth;

import galena.build.depth.Deepened.Condition;
import galena.build.depth.Deepened.Setting;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.OptionalDouble;

/**
 * The highest level that one setting bears in every condition. It is sought in the condition that is likeliest to bind and tried in
 * the others; where one of those does not bear it, it is sought there in turn.
 *
 * @param presets position by name
 * @param load of the part that may be changed, Ω
 * @param each the conditions, all of which bear the level
 * @param binds the one that sets it
 * @param level peak, V
 */
record Bearing(Map<String, Double> presets, OptionalDouble load, List<Borne> each, Borne binds, double level) {
    private static final double JUST_BELOW = 0.97;

    /**
     * @param suspect name of the condition that is likeliest to bind
     * @param reach depth by the small tone's slope at which to start there
     * @return empty where some condition bears no level at all
     */
    static Optional<Bearing> of(
            Map<String, Double> presets, OptionalDouble load, List<Borne> each, String suspect, double reach) {
        Borne binds =
                each.stream().filter(b -> b.name().equals(suspect)).findFirst().orElse(each.get(0));
        OptionalDouble level = binds.most(reach / binds.slope());
        for (int round = 0; round < each.size() && level.isPresent(); round++) {
            double now = level.getAsDouble();
            List<Borne> over = each.parallelStream().filter(b -> !b.bears(now)).toList();
            if (over.isEmpty()) return Optional.of(new Bearing(presets, load, each, binds, now));
            binds = over.get(0);
            for (Borne b : over) if (b.used(now).orElse(2) > binds.used(now).orElse(2)) binds = b;
            level = binds.most(JUST_BELOW * now);
        }
        return Optional.empty();
    }

    /** With it in the shallowest condition, a fraction. */
    double depth() {
        return each.stream().mapToDouble(b -> b.depth(level)).min().orElseThrow();
    }

    /** @param full whether each condition's own highest level is sought too */
    Setting setting(boolean full) {
        List<Condition> conditions = each.parallelStream()
                .map(b -> b.condition(level, full ? most(b) : OptionalDouble.empty()))
                .toList();
        return new Setting(presets, load, level, depth(), binds.name(), conditions);
    }

    private OptionalDouble most(Borne borne) {
        return borne == binds ? OptionalDouble.of(level) : borne.most(level);
    }
}
