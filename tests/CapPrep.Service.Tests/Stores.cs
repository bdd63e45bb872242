using CapPrep.TestKit.Service;
using Xunit;

namespace CapPrep.Service.Tests;

/// <summary>The stores that a test runs on.</summary>
internal static class Stores
{
    /// <summary>Leaves the test out, with its reason, where this machine has no such store.</summary>
    public static void SkipUnlessThere(Store store) => Assert.SkipUnless(
        store == Store.Sqlite || PostgresDatabase.Server is not null,
        $"{PostgresDatabase.Variable} names no PostgreSQL server.");
}
