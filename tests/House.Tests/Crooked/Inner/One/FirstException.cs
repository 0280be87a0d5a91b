namespace House.Tests.Crooked.Inner.One;

/// <summary>Is caught elsewhere.</summary>
internal sealed class FirstException : Exception;
