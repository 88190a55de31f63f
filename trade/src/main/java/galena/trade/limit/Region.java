package galena.trade.limit;

/**
 * A region and what is held of its rules.
 *
 * @param code short name, as a build's intent has it
 * @param name in full
 * @param held whether figures for a medium-wave transmitter are held
 * @param check where the rules in force are to be read
 * @param note what to know, or why nothing is held
 */
public record Region(String code, String name, boolean held, String check, String note) {}
