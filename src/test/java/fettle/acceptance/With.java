package fettle.acceptance;

import java.lang.reflect.Constructor;
import java.lang.reflect.RecordComponent;
import java.util.Arrays;

/** Copies a record with one component changed, so that a variant names what it changes. */
final class With {
  private With() {}

  static <T extends Record> T component(T original, String name, Object value) {
    try {
      RecordComponent[] components = original.getClass().getRecordComponents();
      Object[] values = new Object[components.length];
      Class<?>[] types = new Class<?>[components.length];
      boolean found = false;
      for (int i = 0; i < components.length; i++) {
        types[i] = components[i].getType();
        boolean changed = components[i].getName().equals(name);
        values[i] = changed ? value : components[i].getAccessor().invoke(original);
        found |= changed;
      }
      if (!found) {
        throw new IllegalArgumentException(name + ": not in " + Arrays.toString(components));
      }
      @SuppressWarnings("unchecked")
      Constructor<T> constructor =
          (Constructor<T>) original.getClass().getDeclaredConstructor(types);
      return constructor.newInstance(values);
    } catch (ReflectiveOperationException impossible) {
      throw new IllegalStateException(impossible);
    }
  }
}
