using CapPrep.Service.Storage;
using Shouldly;
using Xunit;

namespace CapPrep.Service.Tests.Storage;

public sealed class DataFolderTests : IDisposable
{
    private readonly string _folder = Directory.CreateTempSubdirectory("capprep-").FullName;

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public void A_folder_that_is_taken_names_its_holder()
    {
        using var first = DataFolderLock.Take(_folder);

        var fault = Should.Throw<DataFolderInUseException>(() => DataFolderLock.Take(_folder));

        fault.Message.ShouldContain(Environment.ProcessId.ToString());
    }

    [Fact]
    public void A_folder_that_was_given_back_can_be_taken_again()
    {
        DataFolderLock.Take(_folder).Dispose();

        Should.NotThrow(() => DataFolderLock.Take(_folder).Dispose());
    }

    [Theory]
    [InlineData("nfs4")]
    [InlineData("cifs")]
    [InlineData("SMB2")]
    public void A_folder_on_a_share_is_refused(string format) =>
        Should.Throw<DataFolderUnfitException>(() => DataFolder.RefuseNetwork("/data", format)).Message.ShouldContain("network");

    [Fact]
    public void A_folder_on_a_disk_is_not() => Should.NotThrow(() => DataFolder.RefuseNetwork("/data", "ext4"));
}

public sealed class SecretsTests
{
    private readonly Secrets _secrets = new(Enumerable.Range(0, 32).Select(i => (byte)i).ToArray());

    [Fact]
    public void What_was_encrypted_is_read_again()
    {
        var plain = "whsec_abc"u8.ToArray();

        var hidden = _secrets.Encrypt(plain);

        hidden.AsSpan().IndexOf(plain).ShouldBe(-1);
        _secrets.Decrypt(hidden).ShouldBe(plain);
    }

    [Fact]
    public void Two_encryptions_of_one_text_differ() =>
        _secrets.Encrypt("same"u8).ShouldNotBe(_secrets.Encrypt("same"u8));

    [Fact]
    public void One_changed_bit_is_noticed()
    {
        var hidden = _secrets.Encrypt("whsec_abc"u8);
        hidden[^1] ^= 1;

        Should.Throw<System.Security.Cryptography.CryptographicException>(() => _secrets.Decrypt(hidden));
    }
}

public sealed class SnakeCaseTests
{
    [Theory]
    [InlineData("Shop", "shop")]
    [InlineData("TapeSha", "tape_sha")]
    [InlineData("LeaseUntil", "lease_until")]
    [InlineData("Sha256", "sha256")]
    public void Names_become_lower_case_with_underscores(string name, string column) => SnakeCase.Of(name).ShouldBe(column);
}
