package galena.trade.source;

/**
 * Source of one number.
 *
 * @param source author or publisher, title, edition
 * @param date of the source, as far as it says; "not stated" otherwise
 * @param basis how it came here
 * @param where address at which it was read, or empty
 * @param note remark, or empty
 */
public record Provenance(String source, String date, Basis basis, String where, String note) {
    public Provenance {
        if (source.isBlank()) throw new IllegalArgumentException("a number without a source is not held");
        if (basis == Basis.SEEN && where.isBlank()) {
            throw new IllegalArgumentException("\"" + source + "\" is marked as seen but says not where");
        }
    }

    /** For numbers that the builder enters. */
    public static Provenance builder(String source) {
        return new Provenance(source, "not stated", Basis.BUILDER, "", "");
    }
}
