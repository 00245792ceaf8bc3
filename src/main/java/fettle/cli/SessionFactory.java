package fettle.cli;

import java.lang.reflect.Constructor;
import picocli.CommandLine;

/** Makes commands, handing the session to those that take one. */
final class SessionFactory implements CommandLine.IFactory {
  private final Session session;

  SessionFactory(Session session) {
    this.session = session;
  }

  @Override
  public <K> K create(Class<K> type) throws Exception {
    for (Constructor<?> constructor : type.getDeclaredConstructors()) {
      Class<?>[] parameters = constructor.getParameterTypes();
      if (parameters.length == 1 && parameters[0] == Session.class) {
        return type.cast(constructor.newInstance(session));
      }
    }
    return CommandLine.defaultFactory().create(type);
  }
}
