using System.Text;
using CapPrep.Engine.Reading;

namespace CapPrep.Engine.Tests.Reading;

/// <summary>Reads small bodies whose only part is called "body" and whose noun is "A body".</summary>
internal static class Bodies
{
    public static ReadResult<Box<T>> Read<T>(string json, Func<ObjectReader, T> read) =>
        Read(Encoding.UTF8.GetBytes(json), read);

    public static ReadResult<Box<T>> Read<T>(byte[] json, Func<ObjectReader, T> read) =>
        JsonBody.Read(json, new Faults("body", "A body"), reader => new Box<T>(read(reader)));

    public static T Value<T>(string json, Func<ObjectReader, T> read) => Read(json, read).Value!.Value;

    public static Violation Fault<T>(string json, Func<ObjectReader, T> read) => Read(json, read).Violations.Single();

    internal sealed record Box<T>(T Value);
}
