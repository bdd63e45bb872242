using CapPrep.Service.Access;
using CsCheck;
using Shouldly;
using Xunit;

namespace CapPrep.Service.Tests.Access;

public sealed class KeyFormTests
{
    [Fact]
    public void A_new_key_is_well_formed_and_never_the_same_twice()
    {
        var keys = Enumerable.Range(0, 200).Select(_ => KeyForm.New()).ToArray();

        keys.ShouldAllBe(key => KeyForm.IsWellFormed(key));
        keys.ShouldBeUnique();
        keys.Select(KeyForm.Start).ShouldAllBe(start => start.Length == 12 && start.StartsWith("cpk_"));
    }

    [Fact]
    public void A_slip_of_the_pen_is_seen_without_asking_anybody()
    {
        var key = KeyForm.New();

        Gen.Select(Gen.Int[0, key.Length - 1], Gen.Char['!', '~']).Sample((at, letter) =>
        {
            var changed = key[..at] + letter + key[(at + 1)..];
            KeyForm.IsWellFormed(changed).ShouldBe(changed == key);
        });
        KeyForm.IsWellFormed(key[..^1]).ShouldBeFalse();
        KeyForm.IsWellFormed(key + "A").ShouldBeFalse();
        KeyForm.IsWellFormed("").ShouldBeFalse();
    }

    [Fact]
    public void Any_text_is_judged_without_a_fault() =>
        Gen.String.Sample(text => KeyForm.IsWellFormed(text).ShouldBeFalse());
}
