package fettle;

import com.tngtech.archunit.core.domain.Dependency;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.lang.ArchCondition;
import com.tngtech.archunit.lang.ConditionEvents;
import com.tngtech.archunit.lang.SimpleConditionEvent;
import java.util.ArrayDeque;
import java.util.Deque;
import java.util.HashSet;
import java.util.Set;

/**
 * Holds that a class, and every class of ours that it leads to, knows the JDK, ours and one
 * exception.
 */
final class NeedOnlyTheJdkAnd extends ArchCondition<JavaClass> {
  private final String exception;

  NeedOnlyTheJdkAnd(String exception) {
    super("need only the JDK and " + exception);
    this.exception = exception;
  }

  @Override
  public void check(JavaClass start, ConditionEvents events) {
    Set<JavaClass> seen = new HashSet<>(Set.of(start));
    Deque<JavaClass> open = new ArrayDeque<>(seen);
    while (!open.isEmpty()) {
      for (Dependency dependency : open.pop().getDirectDependenciesFromSelf()) {
        JavaClass target = dependency.getTargetClass().getBaseComponentType();
        if (target.getPackageName().startsWith("fettle.")) {
          if (seen.add(target)) {
            open.push(target);
          }
        } else if (!target.isPrimitive()
            && !target.getPackageName().startsWith("java.")
            && !target.getName().equals(exception)) {
          events.add(
              SimpleConditionEvent.violated(
                  start, start.getName() + " leads to: " + dependency.getDescription()));
        }
      }
    }
  }
}
