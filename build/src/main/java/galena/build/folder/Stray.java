package galena.build.folder;

import galena.build.quantity.Quantity;

/**
 * A small capacitance that nobody fitted.
 *
 * @param from a net
 * @param to another net
 * @param capacitance in farads
 */
public record Stray(String from, String to, Quantity capacitance) {}
