package galena.desk.command;

import galena.build.quantity.Unit;
import galena.build.winding.Cores;
import galena.build.winding.Shape;
import java.util.List;
import java.util.Optional;
import java.util.OptionalDouble;
import java.util.stream.Stream;
import picocli.CommandLine.Option;

/** The options that say what there is to wind on; one of them is given. */
final class Formers {
    @Option(names = "--tube", paramLabel = "SIZE", description = "One layer on a tube or round frame of this diameter.")
    private Optional<String> tube = Optional.empty();

    @Option(
            names = "--bobbin",
            paramLabel = "SIZES",
            description = "Layers on a bobbin: hub x cheek diameter x width, as in 8x20x12mm.")
    private Optional<String> bobbin = Optional.empty();

    @Option(
            names = "--frame",
            paramLabel = "SIZES",
            description = "A frame with corners: width x height, as in 60x60cm.")
    private Optional<String> frame = Optional.empty();

    @Option(
            names = "--card",
            paramLabel = "SIZES",
            description = "A flat spiral: inner x outer diameter, as in 50x120mm.")
    private Optional<String> card = Optional.empty();

    @Option(names = "--rod", paramLabel = "SIZES", description = "A ferrite rod: length x diameter, as in 140x10mm.")
    private Optional<String> rod = Optional.empty();

    @Option(
            names = "--ring",
            paramLabel = "SIZES",
            description = "A ring core: outer x inner diameter x height, as in 36x23x10mm.")
    private Optional<String> ring = Optional.empty();

    @Option(
            names = "--room",
            paramLabel = "LENGTH",
            description =
                    "Length that turns may take on a tube or frame; 100 mm on a tube, 60 mm on a frame unless said.")
    private Optional<String> room = Optional.empty();

    @Option(names = "--flat", description = "Turns of a frame lie each inside the one before.")
    private boolean flat;

    @Option(
            names = "--core",
            paramLabel = "MATERIAL",
            description = "What rod or ring is made of: a permeability, as in --core 250, or a grade that is held.")
    private Optional<String> core = Optional.empty();

    @Option(
            names = "--sleeve",
            paramLabel = "DIAMETER",
            description = "Outside of what lies under the wire on a rod; the bare rod unless said.")
    private Optional<String> sleeve = Optional.empty();

    @Option(
            names = "--position",
            paramLabel = "LENGTH",
            description = "Middle of the winding from the middle of the rod; 0 mm unless said.")
    private Optional<String> position = Optional.empty();

    @Option(
            names = "--covered",
            paramLabel = "SHARE",
            description = "Part of a ring's round that is wound; 95 %% unless said.")
    private Optional<String> covered = Optional.empty();

    /**
     * The shape; empty where something is wrong with it.
     *
     * @param unknownCore whether the core is what a trial winding shall tell
     */
    Optional<Shape> shape(Asked asked, boolean unknownCore) {
        long given = Stream.of(tube, bobbin, frame, card, rod, ring)
                .filter(Optional::isPresent)
                .count();
        if (given != 1) {
            asked.wrong(
                    "--tube",
                    given == 0 ? "nothing to wind on is given" : given + " things to wind on are given",
                    "One of --tube, --bobbin, --frame, --card, --rod and --ring says what there is to wind on.");
            return Optional.empty();
        }
        asked.onlyWith("--room", room, "--tube or --frame", tube.isPresent() || frame.isPresent());
        if (flat && frame.isEmpty()) asked.wrong("--flat", "means nothing here", "It goes with --frame.");
        asked.onlyWith("--core", core, "--rod or --ring", rod.isPresent() || ring.isPresent());
        asked.onlyWith("--sleeve", sleeve, "--rod", rod.isPresent());
        asked.onlyWith("--position", position, "--rod", rod.isPresent());
        asked.onlyWith("--covered", covered, "--ring", ring.isPresent());
        if (rod.isPresent() || ring.isPresent()) return cored(asked, unknownCore);
        return plain(asked);
    }

    private Optional<Shape> plain(Asked asked) {
        OptionalDouble length = asked.quantity("--room", room, Unit.METRE, 1e-4, 10);
        if (tube.isPresent()) {
            List<Double> s = asked.sizes("--tube", tube.get(), "diameter");
            return s.isEmpty() ? Optional.empty() : Optional.of(new Shape.Tube(s.get(0), length.orElse(0.1)));
        }
        if (bobbin.isPresent()) {
            List<Double> s = asked.sizes("--bobbin", bobbin.get(), "hub", "cheek", "width");
            return s.isEmpty() ? Optional.empty() : Optional.of(new Shape.Bobbin(s.get(0), s.get(1), s.get(2)));
        }
        if (card.isPresent()) {
            List<Double> s = asked.sizes("--card", card.get(), "inner", "outer");
            return s.isEmpty() ? Optional.empty() : Optional.of(new Shape.Card(s.get(0), s.get(1)));
        }
        List<Double> s = asked.sizes("--frame", frame.orElseThrow(), "width", "height");
        return s.isEmpty()
                ? Optional.empty()
                : Optional.of(new Shape.Frame(s.get(0), s.get(1), length.orElse(0.06), flat));
    }

    private Optional<Shape> cored(Asked asked, boolean unknownCore) {
        if (core.isEmpty() && !unknownCore)
            asked.wrong(
                    "--core",
                    "the core's material is not given",
                    "Known grades: " + String.join(", ", Cores.grades())
                            + "; or a permeability. A trial winding tells it: --measured and --turns.");
        Optional<Cores.Material> material = core.isPresent() ? Cores.named(core.get()) : Optional.of(Cores.unknown());
        if (material.isEmpty()) {
            asked.wrong(
                    "--core",
                    '"' + core.orElse("") + "\" is no permeability and no grade that is held",
                    "Known grades: " + String.join(", ", Cores.grades()) + ".");
            return Optional.empty();
        }
        if (rod.isPresent()) {
            List<Double> s = asked.sizes("--rod", rod.get(), "length", "diameter");
            OptionalDouble outside = asked.quantity("--sleeve", sleeve, Unit.METRE, 1e-4, 1);
            OptionalDouble place = asked.quantity("--position", position, Unit.METRE, -1, 1);
            if (s.isEmpty()) return Optional.empty();
            return Optional.of(material.get().stick(s.get(0), s.get(1), outside.orElse(s.get(1)), place.orElse(0)));
        }
        List<Double> s = asked.sizes("--ring", ring.orElseThrow(), "outer", "inner", "height");
        OptionalDouble share = asked.quantity("--covered", covered, Unit.FRACTION, 0.05, 1);
        if (s.isEmpty()) return Optional.empty();
        return Optional.of(material.get().ring(s.get(0), s.get(1), s.get(2), share.orElse(0.95)));
    }
}
