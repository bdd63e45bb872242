namespace CapPrep.Engine;

/// <summary>
/// The engine broke one of its own promises, for instance a written tape that does not read back equal. Never the
/// fault of tape or ticket; nothing of the job may leave the service.
/// </summary>
public sealed class EngineFaultException(string message) : Exception(message);
