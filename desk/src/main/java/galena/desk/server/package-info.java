/**
 * A small server for one person on one machine: {@link galena.desk.server.PageServer} (open it first) listens on the loopback address
 * alone, {@link galena.desk.server.Gate} decides who may ask, and a {@link galena.desk.server.Answerer} answers.
 *
 * <p>Promised: nothing is answered to a request that names another host (a name that was made to point here), that comes from another
 * origin, or that does not bear this start's token; nothing is read beyond the limit of a body; every answer forbids the browser to
 * load anything from elsewhere. Absent on purpose: builds, files, words of a page. Jetty's own handlers are used without a layer
 * above them.
 */
@NullMarked
package galena.desk.server;

import org.jspecify.annotations.NullMarked;
