using Shouldly;
using Xunit;

namespace CapPrep.Drawing.Tests.Builders;

public class GoldenTests
{
    [Fact]
    public void Goldens_are_never_written_in_continuous_integration() =>
        Should.Throw<InvalidOperationException>(() => Golden.Accepting("1", "true"));

    [Fact]
    public void Goldens_are_written_only_when_asked()
    {
        Golden.Accepting(null, null).ShouldBeFalse();
        Golden.Accepting(null, "true").ShouldBeFalse();
        Golden.Accepting("1", null).ShouldBeTrue();
    }
}
