"""Link: resolve names, so that every reference leads somewhere and each thing knows what refers to it."""
