//! The JSON Schema of a backup.

use serde_json::{Value, json};

use super::{BACKUP_VERSION, MOST_VERSIONS};

/// The JSON Schema (draft 2020-12) of a backup. The plans in it are described by the schema of plans, beside it.
pub fn backup_schema() -> Value {
    let plan = json!({ "$ref": "plan.schema.json" });
    json!({
        "$schema": "https://json-schema.org/draft/2020-12/schema",
        "title": "Backup",
        "description": "All plans of a device, with its settings.",
        "type": "object",
        "required": ["kerbstead_backup", "plans"],
        "properties": {
            "kerbstead_backup": {
                "description": "The version of the backup; each plan has its own beside it.",
                "type": "integer", "minimum": 1, "examples": [BACKUP_VERSION],
            },
            "plans": {
                "description": "The plans, in the order of the list.",
                "type": "array", "items": saved(&plan),
            },
            "settings": {
                "description": "What the person chose for themselves.",
                "type": "object",
                "properties": {
                    "us_customary": {
                        "description": "Whether values are shown in US customary units; unset, the region says.",
                        "type": "boolean",
                    },
                    "asked_to_stay": {
                        "description": "Whether the browser was asked not to clear what is kept.",
                        "type": "boolean",
                    },
                },
            },
        },
    })
}

fn saved(plan: &Value) -> Value {
    json!({
        "type": "object",
        "required": ["document"],
        "properties": {
            "document": plan,
            "drafts": {
                "description": "Text that no field could take yet, by the field's path.",
                "type": "object", "additionalProperties": { "type": "string" },
            },
            "is_demo": { "description": "Whether it is the invented example.", "type": "boolean" },
            "earlier": {
                "description": "As it was earlier, the oldest first.",
                "type": "array", "maxItems": MOST_VERSIONS,
                "items": {
                    "type": "object",
                    "required": ["document"],
                    "properties": {
                        "at": {
                            "description": "When it was so, in milliseconds since 1970 began in UTC.",
                            "type": "integer", "minimum": 0,
                        },
                        "document": plan,
                    },
                },
            },
        },
    })
}
