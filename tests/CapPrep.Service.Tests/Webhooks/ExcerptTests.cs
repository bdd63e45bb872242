using System.Text;
using CapPrep.Service.Webhooks;
using CsCheck;
using Shouldly;
using Xunit;

namespace CapPrep.Service.Tests.Webhooks;

public sealed class ExcerptTests
{
    [Fact]
    public void Any_bytes_become_text_that_every_store_takes() => Gen.Byte.Array[0, Excerpt.MaxBytes].Sample(bytes =>
    {
        var text = Excerpt.Clean(bytes);
        Encoding.UTF8.GetByteCount(text).ShouldBeLessThanOrEqualTo(Excerpt.MaxBytes);
        text.EnumerateRunes().ShouldAllBe(rune => !Rune.IsControl(rune) || rune.Value == '\n' || rune.Value == '\r' || rune.Value == '\t');
    });

    [Fact]
    public void Plain_text_stays_as_it_is() => Excerpt.Clean("busy,\ttry später\r\n"u8).ShouldBe("busy,\ttry später\r\n");
}
