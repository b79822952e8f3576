// A picture that is dropped on the page, or chosen, takes the artwork's place.

/** @param taken called with the new beginning, or the record of what is wrong */
export function takesPictures(taken) {
  const send = async file => {
    if (!file) return;
    try {
      const answer = await fetch("picture", {method: "POST",
        headers: {"Content-Type": "application/octet-stream", "Picture-Name": encodeURIComponent(file.name)}, body: file});
      taken(answer.ok ? await answer.json() : {kind: "error", text: `${file.name}: ${answer.status === 413 ? "the file is too large" : answer.statusText}`});
    } catch (e) {
      taken({kind: "error", text: `${file.name} did not come through: ${e.message}`});
    }
  };
  const input = document.getElementById("another");
  input.addEventListener("change", () => { send(input.files[0]); input.value = ""; });
  document.addEventListener("dragover", e => {
    e.preventDefault();
    document.body.classList.add("over");
  });
  document.addEventListener("dragleave", e => { if (!e.relatedTarget) document.body.classList.remove("over"); });
  document.addEventListener("drop", e => {
    e.preventDefault();
    document.body.classList.remove("over");
    send(e.dataTransfer.files[0]);
  });
}
