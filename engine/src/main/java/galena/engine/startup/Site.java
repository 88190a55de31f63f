package galena.engine.startup;

/**
 * Where an extra loss is thought to sit when the margin of an oscillation is asked for: across the part that holds most of the
 * oscillation's energy.
 *
 * @param part the part
 * @param a its first net's unknown
 * @param b its second net's unknown
 */
public record Site(String part, int a, int b) {}
