package fettle;

import com.tngtech.archunit.base.DescribedPredicate;
import com.tngtech.archunit.core.domain.JavaClass;
import com.tngtech.archunit.core.domain.JavaCodeUnit;
import com.tngtech.archunit.core.domain.JavaMember;
import com.tngtech.archunit.core.domain.JavaModifier;
import com.tngtech.archunit.core.domain.JavaType;
import com.tngtech.archunit.lang.ArchCondition;
import com.tngtech.archunit.lang.ConditionEvents;
import com.tngtech.archunit.lang.SimpleConditionEvent;
import java.util.stream.Stream;

/** Holds that no public or protected member of a class shows a type of a library. */
final class ShowNoTypesOf extends ArchCondition<JavaClass> {
  private final DescribedPredicate<? super JavaClass> library;

  ShowNoTypesOf(DescribedPredicate<? super JavaClass> library) {
    super("show no types of " + library.getDescription());
    this.library = library;
  }

  @Override
  public void check(JavaClass type, ConditionEvents events) {
    Stream<JavaType> supertypes =
        Stream.concat(type.getSuperclass().stream(), type.getInterfaces().stream());
    if (shown(supertypes)) {
      events.add(SimpleConditionEvent.violated(type, type.getName() + " extends such a type"));
    }
    for (JavaMember member : type.getMembers()) {
      if (isVisible(member) && shown(typesOf(member))) {
        events.add(SimpleConditionEvent.violated(member, member.getDescription() + " shows one"));
      }
    }
  }

  private static boolean isVisible(JavaMember member) {
    return member.getModifiers().contains(JavaModifier.PUBLIC)
        || member.getModifiers().contains(JavaModifier.PROTECTED);
  }

  private static Stream<JavaType> typesOf(JavaMember member) {
    if (member instanceof JavaCodeUnit unit) {
      return Stream.concat(Stream.of(unit.getReturnType()), unit.getParameterTypes().stream());
    }
    return Stream.of(((com.tngtech.archunit.core.domain.JavaField) member).getType());
  }

  private boolean shown(Stream<JavaType> types) {
    return types.flatMap(t -> t.getAllInvolvedRawTypes().stream()).anyMatch(library);
  }
}
