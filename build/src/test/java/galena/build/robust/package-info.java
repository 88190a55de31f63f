/**
 * The engine under fire: builds drawn at random around the patterns, and good builds spoilt at random. Every draw is a number; the
 * same number gives the same build.
 */
@org.jspecify.annotations.NullMarked
package galena.build.robust;
