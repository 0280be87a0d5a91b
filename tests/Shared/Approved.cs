namespace Shared;

/// <summary>Compares a text with the approved one in the checkout. A missing approval fails. SCALELINK_APPROVE=1 writes it anew: say why in the commit.</summary>
internal static class Approved
{
    public static void Matches(string actual, params string[] file)
    {
        var path = RepositoryRoot.File(file);
        var normal = actual.ReplaceLineEndings("\n").TrimEnd() + "\n";
        if (Environment.GetEnvironmentVariable("SCALELINK_APPROVE") == "1")
        {
            Directory.CreateDirectory(System.IO.Path.GetDirectoryName(path)!);
            File.WriteAllText(path, normal);
        }

        Assert.True(File.Exists(path), $"{path} is missing. Look at the text below; SCALELINK_APPROVE=1 writes it.\n{normal}");
        Assert.Equal(File.ReadAllText(path), normal);
    }
}
