"""The words and patterns that titles and authors are made of: written for this project, by subject and language.

Things are plurals that stand in each pattern as they are. They are so particular that no book is known to bear a
title made of them.
"""

from __future__ import annotations

from collections.abc import Mapping

__all__ = ["GIVEN", "PATTERNS", "SUBJECTS", "SURNAMES", "THINGS"]

SUBJECTS = ("sea", "garden", "kitchen", "mountains", "workshop")

PATTERNS: Mapping[str, tuple[str, ...]] = {
    "en": (
        "A Handbook of {}", "{} and Their Care", "Twelve Talks on {}", "On the Nature of {}",
        "Notes Towards a History of {}", "The Lesser {}", "{} in All Weathers", "A Register of {}",
        "{} Reconsidered", "Against {}",
    ),
    "de": (
        "Handbuch der {}", "{} und ihre Pflege", "Zwölf Gespräche über {}", "Vom Wesen der {}",
        "Verzeichnis der {}", "Die Geschichte der {} in sieben Kapiteln", "{} für Anfänger", "Wider die {}",
    ),
    "fr": (
        "Petit manuel des {}", "Les {} et leurs usages", "Douze entretiens sur les {}", "De la nature des {}",
        "Répertoire des {}", "Pour une histoire des {}", "Éloge des {}", "Contre les {}",
    ),
    "es": (
        "Breve manual de {}", "Doce charlas sobre {}", "De la naturaleza de las {}", "Registro de {}",
        "Notas para una historia de las {}", "Elogio de las {}", "Contra las {}",
    ),
}  # fmt: skip
"""Patterns with one place for a thing. In Spanish things are feminine, for their article."""

THINGS: Mapping[str, Mapping[str, tuple[str, ...]]] = {
    "en": {
        "sea": ("Ferry Ropes", "Harbour Lamps", "Sounding Leads", "Fog Whistles", "Tar Buckets", "Slipway Winches",
                "Herring Ladders", "Mooring Songs"),
        "garden": ("Pea Sticks", "Cloche Bells", "Gooseberry Walls", "Rain Butts", "Seed Drawers", "Espalier Knots",
                   "Mole Fences", "Rhubarb Forcers"),
        "kitchen": ("Dumpling Moulds", "Larder Hooks", "Copper Ladles", "Vinegar Mothers", "Toasting Irons",
                    "Suet Cloths", "Pickle Crocks", "Oatcake Boards"),
        "mountains": ("Goat Bridges", "Pass Huts", "Snow Poles", "Cairn Stones", "Echo Walls", "Hay Sledges",
                      "Glacier Tables", "Bell Ropes of the Upper Valleys"),
        "workshop": ("Glue Pots", "Bodkin Cases", "Press Screws", "Paring Knives", "Brass Hinges", "Thread Winders",
                     "Bench Hooks", "Marbling Combs"),
    },
    "de": {
        "sea": ("Fährseile", "Hafenlampen", "Handlote", "Nebelpfeifen", "Teereimer", "Heringsleitern",
                "Festmacherlieder"),
        "garden": ("Erbsenreiser", "Glasglocken", "Regentonnen", "Samenladen", "Spalierknoten", "Maulwurfszäune"),
        "kitchen": ("Knödelformen", "Speisehaken", "Kupferkellen", "Röstgabeln", "Gurkentöpfe", "Nudelbretter"),
        "mountains": ("Ziegenstege", "Passhütten", "Schneestangen", "Echowände", "Heuschlitten", "Gletschertische"),
        "workshop": ("Leimtöpfe", "Ahlenfutterale", "Pressspindeln", "Schärfmesser", "Fadenwinden", "Marmorierkämme"),
    },
    "fr": {
        "sea": ("cordages de bac", "lampes de port", "plombs de sonde", "sifflets de brume", "seaux de goudron",
                "chants d’amarrage"),
        "garden": ("rames à pois", "cloches de verre", "tonneaux de pluie", "tiroirs à graines", "nœuds d’espalier"),
        "kitchen": ("moules à quenelles", "crocs de garde-manger", "louches de cuivre", "fers à griller",
                    "pots à cornichons"),
        "mountains": ("passerelles de chèvres", "refuges de col", "jalons de neige", "murs d’écho", "traîneaux à foin"),
        "workshop": ("pots de colle", "étuis à poinçons", "vis de presse", "couteaux à parer", "peignes à marbrer"),
    },
    "es": {
        "sea": ("sogas de barcaza", "linternas de puerto", "sondas de plomo", "sirenas de niebla", "cubas de brea"),
        "garden": ("varas de guisante", "campanas de vidrio", "tinas de lluvia", "gavetas de semillas"),
        "kitchen": ("moldes de albóndiga", "alcayatas de despensa", "cazuelas de cobre", "tinajas de encurtido"),
        "mountains": ("pasarelas de cabra", "cabañas de puerto alto", "estacas de nieve", "paredes de eco"),
        "workshop": ("ollas de cola", "fundas de punzón", "prensas de husillo", "agujas de encuadernar"),
    },
}  # fmt: skip

GIVEN: Mapping[str, tuple[str, ...]] = {
    "en": ("Wenna", "Perrin", "Odda", "Tobit", "Hesper", "Corwen", "Ansley", "Merrit"),
    "de": ("Almut", "Wendelin", "Ilsabe", "Korbin", "Hedda", "Lorenz", "Gesine", "Ruprecht"),
    "fr": ("Aurèle", "Mahaut", "Lubin", "Oriane", "Firmin", "Zélie", "Anselme", "Perrine"),
    "es": ("Leocadia", "Fermín", "Oria", "Baldomero", "Nieves", "Ginés", "Casilda", "Evaristo"),
}

SURNAMES: Mapping[str, tuple[str, ...]] = {
    "en": ("Tarnwick", "Ollerby", "Fenstow", "Quillhurst", "Brackmoor", "Saltergate", "Dunnery", "Pellam-Wick"),
    "de": ("Teichgräf", "Ohlenbrook", "Sandvoss-Kehl", "Wiesenhütter", "Brakmöller", "Quellmann", "Steinrück-Au"),
    "fr": ("Vaubrelle", "Lestaing", "Corbenois", "Malefontaine", "Brissarde", "Ormelin", "Tournevaux"),
    "es": ("Valdesauce", "Montarroyo", "Quirbela", "Olmediña", "Peñasgrata", "Ribalcor", "Sarmedo"),
}
