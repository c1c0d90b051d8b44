package boardside.app.web;

import io.javalin.http.Handler;
import io.javalin.http.HandlerType;

/**
 * One line of the access table.
 *
 * @param method GET or POST
 * @param path with parameters in braces
 * @param access who may call it
 * @param handler what it does
 */
record Route(HandlerType method, String path, Access access, Handler handler) {
    static Route get(String path, Access access, Handler handler) {
        return new Route(HandlerType.GET, path, access, handler);
    }

    static Route post(String path, Access access, Handler handler) {
        return new Route(HandlerType.POST, path, access, handler);
    }
}
