package galena.build.winding;

import galena.trade.source.Basis;
import java.util.List;
import java.util.Optional;

/** What rods and rings are made of, as builders name it. */
public final class Cores {
    /** Spread of a permeability that the builder gives; makers' usual tolerance. */
    private static final double KNOWN_TO = 0.2;

    private Cores() {}

    /** A material; makes the shapes that have it. */
    public record Material(galena.trade.ferrite.Material grade) {
        /** A rod of it; lengths in metres. */
        public Shape stick(double length, double diameter, double sleeve, double position) {
            return new Shape.Stick(length, diameter, sleeve, position, grade);
        }

        /** A ring of it; lengths in metres. */
        public Shape ring(double outer, double inner, double height, double coverage) {
            return new Shape.Ring(outer, inner, height, coverage, grade);
        }
    }

    /** The grades held, by their short names: "4B1". */
    public static List<String> grades() {
        return galena.trade.ferrite.Material.table().stream()
                .map(m -> shortened(m.name()))
                .toList();
    }

    private static String shortened(String name) {
        return name.replaceFirst(" .*", "");
    }

    /** A grade by its name, or a material of a given permeability, 1 to 5000; none for anything else. */
    public static Optional<Material> named(String text) {
        String asked = text.strip();
        Optional<galena.trade.ferrite.Material> grade = galena.trade.ferrite.Material.table().stream()
                .filter(m ->
                        shortened(m.name()).equalsIgnoreCase(asked) || m.name().equalsIgnoreCase(asked))
                .findFirst();
        if (grade.isPresent()) return grade.map(Material::new);
        if (!asked.matches("[0-9]{1,4}(\\.[0-9]+)?")) return Optional.empty();
        double permeability = Double.parseDouble(asked);
        if (!(permeability >= 1.01 && permeability <= galena.trade.ferrite.Material.MOST_PERMEABLE))
            return Optional.empty();
        return Optional.of(new Material(new galena.trade.ferrite.Material(
                "unnamed", permeability, KNOWN_TO, List.of(), "", "given", Basis.BUILDER)));
    }

    /** What a trial winding shall tell; its permeability isn't used. */
    public static Material unknown() {
        return new Material(galena.trade.ferrite.Material.ofPermeability(USUAL));
    }

    private static final double USUAL = 250;
}
