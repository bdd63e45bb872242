using System.Reflection;
using System.Runtime.CompilerServices;
using Shouldly;
using Xunit;

namespace CapPrep.Engine.Tests.Conventions;

public sealed class EngineConventionTests
{
    private static readonly Assembly Engine = typeof(CapPrepper).Assembly;

    private const BindingFlags Own =
        BindingFlags.Public | BindingFlags.Instance | BindingFlags.Static | BindingFlags.DeclaredOnly;

    [Fact]
    public void The_engine_knows_the_base_library_and_the_geometry_library_and_nothing_else() =>
        Engine.GetReferencedAssemblies()
            .Select(name => name.Name!)
            .Where(name => !name.StartsWith("System.", StringComparison.Ordinal))
            .ShouldBe(["NetTopologySuite"]);

    [Fact]
    public void No_public_value_of_the_engine_can_be_changed()
    {
        var setters = Engine.GetExportedTypes()
            .SelectMany(type => type.GetProperties(Own))
            .Where(property => property.GetSetMethod() is { } setter && !IsInitOnly(setter))
            .Select(property => $"{property.DeclaringType}.{property.Name}");
        var fields = Engine.GetExportedTypes()
            .Where(type => !type.IsEnum)
            .SelectMany(type => type.GetFields(Own))
            .Where(field => field is { IsInitOnly: false, IsLiteral: false })
            .Select(field => $"{field.DeclaringType}.{field.Name}");

        setters.Concat(fields).ShouldBeEmpty();
    }

    [Fact]
    public void Nobody_outside_can_build_on_a_class_of_the_engine() =>
        Engine.GetExportedTypes()
            .Where(type => type is { IsClass: true, IsSealed: false, IsAbstract: false })
            .ShouldBeEmpty();

    private static bool IsInitOnly(MethodInfo setter) =>
        setter.ReturnParameter.GetRequiredCustomModifiers().Contains(typeof(IsExternalInit));
}
