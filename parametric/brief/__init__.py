"""The user's TOML file: model, loader, template. The only home of pydantic."""
