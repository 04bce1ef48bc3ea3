"""The pages: thin views over the services, one module a page."""

from __future__ import annotations

from flask import Flask
from flask_wtf.csrf import CSRFProtect
from jinja2 import StrictUndefined

from app.config import Config
from app.paths import resource_dir
from app.store.engine import make_engine
from app.web import errors, files_view, guard, pages, paired, session, site

MOST_FORM_BYTES = 512 * 1024
MOST_FORM_PARTS = 20_000
YEAR_S = 365 * 24 * 3600


def create_app(config: Config) -> Flask:
    """Return the web application on one data folder, whose file is up to date."""
    app = Flask(
        "app",
        template_folder=str(resource_dir("templates")),
        static_folder=str(resource_dir("static")),
    )
    app.config.update(
        SECRET_KEY=config.secret_key,
        WAITING=config.waiting,
        SESSION_COOKIE_NAME="ways",
        SESSION_COOKIE_SAMESITE="Lax",
        MAX_CONTENT_LENGTH=MOST_FORM_BYTES,
        MAX_FORM_MEMORY_SIZE=MOST_FORM_BYTES,
        MAX_FORM_PARTS=MOST_FORM_PARTS,
        # A static file's address changes with the file, so that it may be kept.
        SEND_FILE_MAX_AGE_DEFAULT=YEAR_S,
        WTF_CSRF_TIME_LIMIT=None,
        WTF_CSRF_SSL_STRICT=False,
    )
    app.jinja_env.undefined = StrictUndefined
    app.jinja_env.trim_blocks = True
    app.jinja_env.lstrip_blocks = True
    guard.init_app(app)
    paired.init_app(app, config)
    CSRFProtect(app)
    session.init_app(app, make_engine(config.database))
    files_view.init_app(app, config.files)
    errors.init_app(app)
    site.init_app(app, config)
    pages.init_app(app)
    return app
