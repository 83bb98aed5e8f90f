//! Finding things as a person with or without sight does: by what they are and what they are called.

use super::Browser;
use anyhow::{Context, Result, bail};
use serde_json::{Value, json};
use thirtyfour::{By, Key, TypingData, WebElement};

/// Marks an element from the accessibility tree so that `WebDriver`, which knows only the document, finds it.
const MARK: &str = "data-found-by-test";

/// An element of the page.
pub struct Found<'b> {
    browser: &'b Browser,
    element: WebElement,
}

impl Browser {
    /// The element of a role ("button", "textbox", "spinbutton", "combobox", "link", "heading", …) with an
    /// accessible name, once there is one. A name that is equal wins over one that contains the given.
    pub fn find(&self, role: &str, name: &str) -> Result<Found<'_>> {
        self.wait_until(
            &format!("a {role} named {name:?}"),
            |browser| Ok(best(&browser.nodes(role)?, name).is_some()),
        )?;
        let nodes = self.nodes(role)?;
        let node = best(&nodes, name).with_context(|| format!("the {role} {name:?} went away"))?;
        self.element(&node["backendDOMNodeId"])
    }

    /// The innermost element that shows exactly this text.
    pub fn find_text(&self, text: &str) -> Result<Found<'_>> {
        self.wait_for_text(text)?;
        let quoted = if text.contains('"') { format!("'{text}'") } else { format!("\"{text}\"") };
        let path = format!("//body//*[normalize-space(.)={quoted}][not(*[normalize-space(.)={quoted}])]");
        let element = self.run(async |web| web.find(By::XPath(path)).await)?;
        Ok(Found { browser: self, element })
    }

    /// The element that a CSS selector finds, for what has neither role nor name.
    pub fn find_css(&self, selector: &str) -> Result<Found<'_>> {
        let element = self.run(async |web| web.find(By::Css(selector)).await)?;
        Ok(Found { browser: self, element })
    }

    /// The accessible names of everything of a role, in the order of the page.
    pub fn names(&self, role: &str) -> Result<Vec<String>> {
        Ok(self.nodes(role)?.iter().map(|node| name_of(node).to_owned()).collect())
    }

    /// Role and accessible name of what has the focus, such as "button Add".
    pub fn focused(&self) -> Result<String> {
        let active = json!({ "expression": "document.activeElement" });
        let object = self.devtools("Runtime.evaluate", active)?["result"]["objectId"].clone();
        let request = json!({ "objectId": object, "fetchRelatives": false });
        let tree = self.devtools("Accessibility.getPartialAXTree", request)?;
        let node = &tree["nodes"][0];
        let role = node["role"]["value"].as_str().unwrap_or_default();
        Ok(format!("{role} {}", name_of(node)))
    }

    fn nodes(&self, role: &str) -> Result<Vec<Value>> {
        let document = self.devtools("DOM.getDocument", json!({ "depth": 0 }))?;
        let query = json!({ "nodeId": document["root"]["nodeId"], "role": role });
        let mut answer = self.devtools("Accessibility.queryAXTree", query)?;
        let nodes = answer["nodes"].as_array_mut().map(std::mem::take).unwrap_or_default();
        Ok(nodes.into_iter().filter(|node| node["ignored"] != true).collect())
    }

    fn element(&self, backend_node: &Value) -> Result<Found<'_>> {
        let resolved = self.devtools("DOM.resolveNode", json!({ "backendNodeId": backend_node }))?;
        let object = &resolved["object"]["objectId"];
        self.call(object, &format!("function () {{ this.setAttribute('{MARK}', '') }}"))?;
        let element = self.run(async |web| web.find(By::Css(format!("[{MARK}]"))).await);
        self.call(object, &format!("function () {{ this.removeAttribute('{MARK}') }}"))?;
        Ok(Found { browser: self, element: element? })
    }

    fn call(&self, object: &Value, function: &str) -> Result<()> {
        let request = json!({ "objectId": object, "functionDeclaration": function });
        self.devtools("Runtime.callFunctionOn", request).map(drop)
    }
}

fn best<'a>(nodes: &'a [Value], name: &str) -> Option<&'a Value> {
    let equal = nodes.iter().find(|node| name_of(node) == name);
    equal.or_else(|| nodes.iter().find(|node| name_of(node).contains(name)))
}

fn name_of(node: &Value) -> &str {
    node["name"]["value"].as_str().unwrap_or_default()
}

impl Found<'_> {
    /// Clicks in its middle, after scrolling it to the middle of the page, where no bar lies over it.
    pub fn click(&self) -> Result<()> {
        let element = self.element.to_json()?;
        self.browser.script("arguments[0].scrollIntoView({ block: 'center' })", vec![element])?;
        self.browser.run(async |_| self.element.click().await)
    }

    /// Types behind what it contains.
    pub fn type_keys(&self, keys: impl Into<TypingData>) -> Result<()> {
        let keys = keys.into();
        self.browser.run(async |_| self.element.send_keys(keys).await)
    }

    /// Types in place of what it contains, as a person does: all selected first.
    pub fn replace(&self, text: &str) -> Result<()> {
        self.type_keys(Key::Control + "a")?;
        if text.is_empty() { self.type_keys(Key::Delete) } else { self.type_keys(text) }
    }

    /// Chooses the option of a selection list that shows a text.
    pub fn choose(&self, option: &str) -> Result<()> {
        let options = self.browser.run(async |_| self.element.find_all(By::Tag("option")).await)?;
        for candidate in options {
            let text = self.browser.run(async |_| candidate.text().await)?;
            if text.trim() == option {
                return self.browser.run(async |_| candidate.click().await);
            }
        }
        bail!("there is no option {option:?}")
    }

    /// The text that it shows.
    pub fn text(&self) -> Result<String> {
        self.browser.run(async |_| self.element.text().await)
    }

    /// What a field contains.
    pub fn value(&self) -> Result<String> {
        Ok(self.browser.run(async |_| self.element.value().await)?.unwrap_or_default())
    }

    /// An attribute as the document has it.
    pub fn attribute(&self, name: &str) -> Result<Option<String>> {
        self.browser.run(async |_| self.element.attr(name).await)
    }

    /// Whether a box is ticked or an option is chosen.
    pub fn is_chosen(&self) -> Result<bool> {
        self.browser.run(async |_| self.element.is_selected().await)
    }
}
