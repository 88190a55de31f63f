package galena.packet.schematic;

import java.util.List;

/**
 * One symbol to be placed.
 *
 * @param glyph its shape
 * @param parts the parts it stands for: one, or two windings on one core
 * @param values what is written beside each part, in the order of {@code parts}
 * @param pinNames as the build calls them, in the order of the glyph's pins
 * @param nets by pin, indices into {@link Netlist#nets()}
 * @param likeEnds pins of windings that swing together, to be marked with a dot
 */
record Element(
        Glyph glyph,
        List<String> parts,
        List<String> values,
        List<String> pinNames,
        List<Integer> nets,
        List<Integer> likeEnds) {
    Element {
        parts = List.copyOf(parts);
        values = List.copyOf(values);
        pinNames = List.copyOf(pinNames);
        nets = List.copyOf(nets);
        likeEnds = List.copyOf(likeEnds);
        if (nets.size() != glyph.pins().size() || pinNames.size() != nets.size() || parts.size() != values.size())
            throw new IllegalArgumentException(parts + ": pins and names of " + glyph + " don't match");
    }

    /** A symbol for one part. */
    static Element of(Glyph glyph, String part, String value, List<String> pinNames, List<Integer> nets) {
        return new Element(glyph, List.of(part), List.of(value), pinNames, nets, List.of());
    }

    boolean isWindings() {
        return parts.size() == 2;
    }
}
