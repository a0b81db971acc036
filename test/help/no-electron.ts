/** Stands in for electron in unit tests: an import that no test has mocked fails at once instead of starting a download. */
throw new Error('electron was imported without a mock')
