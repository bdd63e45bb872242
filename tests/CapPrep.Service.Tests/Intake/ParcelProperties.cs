using System.Text;
using CapPrep.Service.Intake;
using CsCheck;
using Shouldly;
using Xunit;

namespace CapPrep.Service.Tests.Intake;

public sealed class ParcelProperties
{
    private static readonly byte[] Sound = Encoding.UTF8.GetBytes(
        "--b\r\nContent-Disposition: form-data; name=\"ticket\"\r\n\r\n{}\r\n"
        + "--b\r\nContent-Disposition: form-data; name=\"tape\"; filename=\"a.dst\"\r\n\r\nAAA\r\n--b--\r\n");

    [Fact]
    public async Task Any_bytes_are_a_parcel_or_a_refusal_with_a_reason() =>
        await Gen.Byte.Array[0, 300].SampleAsync(Judge, iter: 500, threads: 1);

    [Fact]
    public async Task Changed_parts_are_a_parcel_or_a_refusal_with_a_reason() =>
        await Gen.Select(Gen.Int[0, Sound.Length - 1], Gen.Byte, Gen.Int[0, Sound.Length]).SampleAsync(
            async (at, value, length) =>
            {
                var bytes = Sound.ToArray();
                bytes[at] = value;
                await Judge(bytes[..length]);
            },
            iter: 2000, threads: 1);

    [Fact]
    public async Task The_sound_parts_are_a_parcel()
    {
        var reading = await MultipartParcel.Read("multipart/form-data; boundary=b", Sound, CancellationToken.None);

        reading.Parcel!.FileName.ShouldBe("a.dst");
        reading.Parcel.Tape.ShouldBe("AAA"u8.ToArray());
    }

    [Fact]
    public void A_tape_text_with_half_of_a_surrogate_pair_is_refused()
    {
        var reading = JsonParcel.Read(Encoding.UTF8.GetBytes("""{"ticket":{},"tape":"\ud800"}"""));

        reading.Refusal!.Violations.ShouldHaveSingleItem().Pointer.ShouldBe("/tape");
    }

    [Theory]
    [InlineData("filename=\"=?utf-7?B?KzNBMC0=?=\"")]
    [InlineData("filename=\"=?no-such-alphabet?B?QQ==?=\"")]
    [InlineData("filename*=utf-7''a")]
    public async Task A_file_name_in_an_alphabet_nobody_reads_is_a_parcel_or_a_refusal(string name)
    {
        var bytes = Encoding.UTF8.GetBytes(Encoding.UTF8.GetString(Sound).Replace("filename=\"a.dst\"", name, StringComparison.Ordinal));

        await Judge(bytes);
    }

    [Fact]
    public void Any_name_is_cleaned_to_a_text_that_stays_as_it_is() =>
        Gen.String.Sample(name =>
        {
            var cleaned = FileName.Cleaned(name);
            FileName.Cleaned(cleaned).ShouldBe(cleaned);
            (cleaned ?? "").ShouldNotContain("/");
            (cleaned ?? "").EnumerateRunes().Count().ShouldBeLessThanOrEqualTo(FileName.Longest);
            (cleaned ?? "").Any(char.IsControl).ShouldBeFalse();
        });

    private static async Task Judge(byte[] bytes)
    {
        foreach (var reading in new[] { JsonParcel.Read(bytes), await MultipartParcel.Read("multipart/form-data; boundary=b", bytes, CancellationToken.None) })
            (reading.Parcel is not null || reading.Refusal!.Violations.Count > 0).ShouldBeTrue();
    }
}
