package galena.build.attempt;

import galena.build.folder.Build;
import galena.build.folder.PartEntry;
import galena.build.folder.PartKind;
import galena.build.quantity.Quantity;
import galena.build.source.BadInputException;
import galena.build.spread.Drawn;
import java.util.Map;
import java.util.Optional;
import java.util.Set;

/** The preset that sets the depth: fully up while a build is judged, then where the programme's level gives the wanted depth. */
public final class Depth {
    private static final double UP = 0.95;
    private static final int MOST_ROUNDS = 3;

    private Depth() {}

    /** The preset that the audio source works into. */
    public static Optional<PartEntry> preset(Build build) {
        Optional<PartEntry> audio = build.parts().values().stream()
                .filter(p -> p.kind().isProgramme())
                .findFirst();
        if (audio.isEmpty()) return Optional.empty();
        String line = audio.get().pin("plus");
        return build.parts().values().stream()
                .filter(p -> p.kind() == PartKind.PRESET)
                .filter(p -> Set.copyOf(p.pins().values()).contains(line))
                .findFirst();
    }

    /** The build with that preset fully up, or nearly; a preset that turns the other way is left as it is. */
    public static Build up(Build build) throws BadInputException {
        Optional<PartEntry> preset = preset(build);
        if (preset.isEmpty() || !turnsUp(preset.get(), build)) return build;
        if (preset.get().position().orElse(UP) >= UP) return build;
        return Draft.with(build, Map.of(preset.get().path() + ".set", percent(UP)));
    }

    private static boolean turnsUp(PartEntry preset, Build build) {
        return preset.pin("to")
                .equals(build.parts().values().stream()
                        .filter(p -> p.kind().isProgramme())
                        .findFirst()
                        .orElseThrow()
                        .pin("plus"));
    }

    private static String percent(double position) {
        return Math.round(100 * position) + " %";
    }

    /** The preset set so that the programme's level gives the wanted depth with typical parts; the build as it is where it can't. */
    public static Tried set(Tried tried, Looking looking) throws BadInputException {
        Optional<PartEntry> preset = preset(tried.build());
        Optional<Double> level =
                tried.build().intent().programme().map(p -> p.level()).map(Quantity::value);
        if (preset.isEmpty() || level.isEmpty() || !turnsUp(preset.get(), tried.build())) return tried;
        Tried now = tried;
        for (int k = 0; k < MOST_ROUNDS; k++) {
            Double audio = now.typical().values().get(Drawn.Quantity.AUDIO);
            if (audio == null) return tried;
            double position = now.build()
                    .part(preset.get().name())
                    .orElseThrow()
                    .position()
                    .orElseThrow();
            double wanted = Math.min(UP, position * audio / level.get());
            if (Math.abs(wanted - position) < 0.005 || wanted < 0.02) break;
            Build next = Draft.with(now.build(), Map.of(preset.get().path() + ".set", percent(wanted)));
            Optional<Tried> look = looking.look(next, now.running());
            if (look.isEmpty()) return tried;
            now = look.get();
        }
        return now;
    }
}
